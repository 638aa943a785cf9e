// What is made to be printed or read alone: the safety sheet, the whole report, the packet for the
// shop, full-size strips.

import { el, ownFile, setHidden, setText, syncList } from './dom.js';
import { placeOf, save } from './files.js';
import { makePacket } from './packet.js';
import { fillItem, makeItem } from './results.js';

const find = (id) => document.getElementById(id);
// Where inches are in use the paper is Letter.
const paperOf = (units) => (units === 'inch' ? 'letter' : 'a4');
const htmlFile = (text) => new Blob([text], { type: 'text/html' });

const types = { pdf: 'application/pdf', html: 'text/html', csv: 'text/csv', svg: 'image/svg+xml', ics: 'text/calendar', json: 'application/json' };
const fileOf = ({ name, bytes }) => new File([bytes], name.replace('/', '-'), { type: types[name.slice(name.lastIndexOf('.') + 1)] });

// How far the packet is, in words and as a bar.
const progressWords = ({ done, all, inches }) =>
  `${inches ? 'What an inch more of each body would cost' : 'The cuts of the station'}: ${done} of ${all} plans made.`;

// What does not work and what is not known, beside the button that makes a packet of it: how many,
// and the worst in words. The report has them in that order.
function makeOpen(openRule) {
  const most = 2;
  const count = el('p', { id: 'open-count' });
  const worst = el('div');
  return {
    root: el('div', { id: 'open-findings' }, count, worst),
    update(report, page) {
      const words = new Map(page.sections.flatMap(({ items }) => items ?? []).map((item) => [item.id, item]));
      const open = report.findings.filter(({ verdict }) => verdict === 'fail' || verdict === 'unknown');
      const fails = open.filter(({ verdict }) => verdict === 'fail').length;
      const unknown = open.length - fails;
      setText(count, open.length === 0 ? 'Nothing fails, and nothing that is asked is unknown.'
        : `${fails} ${fails === 1 ? 'thing does' : 'things do'} not work and ${unknown} ${unknown === 1 ? 'is' : 'are'} not known. The packet is made all the same. ${open.length > most ? 'First:' : ''}`);
      syncList(worst, open.map(({ id }) => words.get(id)).filter(Boolean).slice(0, most), () => makeItem(openRule), fillItem);
    },
  };
}

// The packet: made when asked for, its PDF saved at once, every other file beside it.
function offerPacket(engine, units, say, openRule) {
  const open = makeOpen(openRule);
  const paper = el('select', { id: 'packet-paper' },
    el('option', { value: 'letter', text: 'Letter' }), el('option', { value: 'a4', text: 'A4' }));
  let picked = false;
  paper.addEventListener('change', () => { picked = true; });
  const make = el('button', { type: 'button', class: 'main', id: 'make-packet', text: 'Make the packet' });
  const stop = el('button', { type: 'button', class: 'plain', id: 'stop-packet', text: 'Stop, and take the best so far', hidden: true });
  const bar = el('progress', { id: 'packet-progress', 'aria-label': 'The packet', hidden: true });
  const files = el('div', { id: 'packet-files' });
  const again = el('button', { type: 'button', class: 'main', id: 'packet-again', hidden: true, text: 'Changed since: make it again', click() {
    make.click();
    stop.focus();
  } });
  const send = el('button', { type: 'button', class: 'plain', id: 'send-packet', text: 'Send the packet', hidden: true });
  find('paper-state').before(
    el('p', { text: 'The packet is what a shop builds from: drawings, parts and all that follows from them.' }),
    open.root,
    el('div', { class: 'row' }, el('label', { for: 'packet-paper', text: 'Paper' }), paper, make, stop), bar);
  find('paper-state').after(again, send, files);
  const letter = () => paper.value === 'letter';
  // What the files come from: they are offered while this is what it was.
  const source = () => [engine.configText(), units(), paper.value].join();
  let pdf = null;
  let madeFrom = '';
  let madeWords = '';
  let old = null;  // not known yet, or whether it changed since
  function offerWhatHolds() {
    if (!pdf || old === (source() !== madeFrom)) return;
    old = source() !== madeFrom;
    setHidden(again, !old);
    setHidden(files, old);
    setHidden(send, old || !navigator.canShare?.({ files: [pdf] }));
    say(old ? 'The station, its units or the paper changed since the packet was made.' : madeWords);
  }
  // A change shows here a moment after it.
  const saveIfHolds = (file) => {
    offerWhatHolds();
    if (!old) save(file, file.name);
  };
  paper.addEventListener('change', offerWhatHolds);
  make.addEventListener('click', async () => {
    say('Making the packet.');
    make.disabled = true;
    pdf = null;
    const from = source();
    for (const part of [again, send, files]) part.hidden = true;
    for (const part of [stop, bar]) part.hidden = false;
    bar.removeAttribute('value');
    let stopped = false;
    const packet = makePacket(engine, {
      script: ownFile('js/packet-worker.js'),
      address: location.href.split('#')[0],
      letter: letter(),
      units: units(),
      told(progress) {
        bar.max = progress.all;
        bar.value = progress.done;
        bar.textContent = progressWords(progress);
      },
    });
    stop.onclick = () => {
      stopped = true;
      packet.stop();
    };
    let all;
    try {
      all = (await packet.files).map(fileOf);
    } catch {
      say('The packet could not be made on this device: save the file of the station, and use another one.');
      return;
    } finally {
      make.disabled = false;
      for (const part of [stop, bar]) part.hidden = true;
    }
    [pdf] = all;
    madeFrom = from;
    const offer = (file) => el('li', {}, el('button', {
      type: 'button', class: file === pdf ? 'main' : 'plain', text: `Save ${file.name}`, click: () => saveIfHolds(file),
    }));
    const isDrawing = (file) => file.type === types.svg;
    const drawings = all.filter(isDrawing);
    // Each drawing is in the PDF already; by themselves they would bury the rest.
    files.replaceChildren(
      el('ul', { class: 'bare row' }, ...all.filter((file) => !isDrawing(file)).map(offer)),
      el('details', {}, el('summary', { text: `${drawings.length} drawings, one by one` }),
        el('ul', { class: 'bare row' }, ...drawings.map(offer))));
    madeWords = `${pdf.name} is made and given to this device to save: the whole packet. Its parts, as files of their own, are below.${
      stopped ? ' You stopped the search: each cut plan is the best so far, and says how far from proven it is.' : ''}`;
    old = null;
    offerWhatHolds();
    if (!old) save(pdf, pdf.name);
  });
  send.addEventListener('click', async () => {
    offerWhatHolds();
    if (old) return;
    try {
      await navigator.share({ title: 'Hearthsight packet', files: [pdf] });
    } catch (error) {
      if (error.name !== 'AbortError') save(pdf, pdf.name);
    }
  });
  return {
    // The paper goes with the units until a person has picked one.
    update(report, page) {
      open.update(report, page);
      if (!picked) paper.value = paperOf(units());
      offerWhatHolds();
    },
  };
}

// `units()` says which paper a reader has, `openRule(rule)` opens a reason.
export function listenToPaper(engine, units, openRule) {
  const say = (words) => setText(find('paper-state'), words);
  // The sheet opens in its own tab, under this page's policy, so its looks are links to our own
  // files; what is saved has them inside.
  const looks = [ownFile('theme.css'), ownFile('report.css')];
  find('open-safety').addEventListener('click', () => {
    const style = looks.map((url) => `<link rel="stylesheet" href="${url.replaceAll('&', '&amp;')}"/>`).join('\n');
    if (!window.open(placeOf(htmlFile(engine.safetyHtml(style))), '_blank')) {
      say('This browser opens no second page: save the whole report instead.');
    }
  });
  const packet = offerPacket(engine, units, say, openRule);
  find('save-report').addEventListener('click', async () => {
    try {
      const styles = await Promise.all(looks.map(async (url) => {
        const answer = await fetch(url);
        if (!answer.ok) throw new Error(url);
        return answer.text();
      }));
      save(htmlFile(engine.reportHtml(`<style>\n${styles.join('')}</style>\n`)), 'hearthsight-report.html');
    } catch {
      say('The report needs the network once: try again when there is some.');
    }
  });
  return packet;
}

// Full-size strips of the base's cuts, as a file: in a tab of this page its policy would drop the
// sheets' own size. `units()` says which paper a reader has.
export function listenToStrips(engine, units) {
  find('save-strips').addEventListener('click', () => {
    const html = engine.stripsHtml(paperOf(units()));
    if (html !== '') save(htmlFile(html), 'hearthsight-strips.html');
    setText(find('strips-state'), html === ''
      ? 'No panel of the base is cut: it has no readings at both ends yet, or is best left straight.'
      : 'Print the file at 100 %, not fitted to the page, and measure the 100 mm bars before you cut.');
  });
}
