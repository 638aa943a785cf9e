// Taking the station elsewhere: the link, the phone's own share sheet, a file; and what belongs to
// this device alone, its units.

import { refusal } from './address.js';
import { setText } from './dom.js';

const find = (id) => document.getElementById(id);
// A station is a few hundred bytes; a larger file is something else, and is not read at all.
const largestFile = 1 << 20;
const copied = 'Copied.';

// The address with the present link, whatever the address bar shows at this moment.
const fullLink = (engine) => `${location.href.split('#')[0]}#${engine.link()}`;

export function makeShare(engine, { openLink, openJson, setUnits, units }) {
  const text = find('link-text');
  const say = (words) => setText(find('copy-state'), words);
  const sayOfPaper = (words) => setText(find('paper-state'), words);

  // For browsers and pages that may not write the clipboard: the link, ready to be copied by hand.
  const offer = () => {
    text.focus();
    text.select();
    say('The link is selected: copy it with your device\u2019s own Copy.');
  };
  find('copy-link').addEventListener('click', async () => {
    try {
      await navigator.clipboard.writeText(fullLink(engine));
      say(copied);
    } catch {
      offer();
    }
  });

  if (navigator.share) {
    find('send-link').hidden = false;
    find('send-link').addEventListener('click', async () => {
      try {
        await navigator.share({ title: 'Hearthsight station', url: fullLink(engine) });
      } catch (error) {
        if (error.name !== 'AbortError') offer();
      }
    });
  }
  text.addEventListener('focus', () => text.select());

  find('open-link').addEventListener('submit', (event) => {
    event.preventDefault();
    const given = find('paste-text').value;
    // People paste the whole address, often broken over lines by a chat.
    const problems = openLink(given.slice(given.indexOf('#') + 1).trim());
    setText(find('paste-error'), problems.length > 0 ? refusal(problems) : '');
    if (problems.length === 0) find('paste-text').value = '';
  });

  // Some browsers read it only after this turn.
  const placeOf = (text, type) => {
    const place = URL.createObjectURL(new Blob([text], { type }));
    setTimeout(() => URL.revokeObjectURL(place), 60000);
    return place;
  };
  const save = (text, type, name) => {
    const anchor = document.createElement('a');
    anchor.href = placeOf(text, type);
    anchor.download = name;
    anchor.click();
  };
  find('save-file').addEventListener('click', () => {
    save(engine.configText(), 'application/json', 'hearthsight-station.json');
  });

  // The sheet opens in its own tab, under this page's policy, so its looks are links to our own
  // files; what is saved has them inside.
  const theme = document.querySelector('link[href$="theme.css"]').href;
  const looks = [theme, new URL('report.css', theme).href];
  find('open-safety').addEventListener('click', () => {
    const style = looks.map((url) => `<link rel="stylesheet" href="${url.replaceAll('&', '&amp;')}"/>`).join('\n');
    if (!window.open(placeOf(engine.safetyHtml(style), 'text/html'), '_blank')) {
      sayOfPaper('This browser opens no second page: save the whole report instead.');
    }
  });
  find('save-report').addEventListener('click', async () => {
    try {
      const styles = await Promise.all(looks.map(async (url) => {
        const answer = await fetch(url);
        if (!answer.ok) throw new Error(url);
        return answer.text();
      }));
      save(engine.reportHtml(`<style>\n${styles.join('')}</style>\n`), 'text/html', 'hearthsight-report.html');
    } catch {
      sayOfPaper('The report needs the network once: try again when there is some.');
    }
  });
  find('open-file').addEventListener('change', async (event) => {
    const [file] = event.target.files;
    event.target.value = '';
    if (!file) return;
    if (file.size > largestFile) {
      say('That file is too large to be a station.');
      return;
    }
    const problems = openJson(await file.text());
    say(problems.length === 0 ? 'Opened.' : problems.map(({ message }) => message).join(' '));
  });

  for (const radio of document.querySelectorAll('input[name="units"]')) {
    radio.addEventListener('change', () => setUnits(radio.value));
  }

  return {
    update() {
      for (const radio of document.querySelectorAll('input[name="units"]')) radio.checked = radio.value === units();
      const link = fullLink(engine);
      if (text.value !== link) {
        text.value = link;
        // What was copied is no longer the present link.
        if (find('copy-state').textContent === copied) say('');
      }
    },
  };
}
