// Taking the station elsewhere: the link, the square that a camera reads, the phone's own share
// sheet, a file; and what belongs to this device alone, its units.

import { invitation, isInvitation, linkIn, refusal } from './address.js';
import { el, sayOn, setHidden, setText } from './dom.js';
import { fileOf, listenToDrops, listenToPicker, openFile, opened, saveFile } from './files.js';

const find = (id) => document.getElementById(id);
const copied = 'Copied.';
const restMs = 250;
// Longer ones are cut by some chat programs; what is larger goes as a file.
const longestLink = 500;
const tooLong = `This station is too large for a link that every chat program carries (more than ${longestLink} characters). Send it as a file.`;

// The address with the present link, whatever the address bar shows at this moment.
const addressOf = (link) => `${location.href.split('#')[0]}#${link}`;
const fullLink = (engine) => addressOf(engine.link());

const fitsLink = (engine) => engine.link().length <= longestLink;

// The link as a square, on the screen and on paper. Made only while it can be seen, and not for
// every step of a drag.
function makeSquare(engine) {
  const image = el('img', { alt: 'The link of this station as a square of black and white for a phone\u2019s camera.' });
  const figure = el('figure', { id: 'square', hidden: true }, image,
    el('figcaption', { text: 'Point another phone\u2019s camera at this square: it opens this station there.' }));
  let shown = '';
  let seen = false;
  let timer = 0;
  const draw = () => {
    const link = fitsLink(engine) ? fullLink(engine) : '';
    if (link === shown) return;
    shown = link;
    const svg = link && engine.square(link);
    setHidden(figure, !svg);
    if (svg) image.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
  };
  addEventListener('beforeprint', draw);
  return {
    figure,
    update() {
      clearTimeout(timer);
      const wasSeen = seen;
      seen = figure.parentElement.offsetParent !== null;
      // What has just appeared shows no link of before.
      if (seen && wasSeen) timer = setTimeout(draw, restMs); else if (seen) draw();
    },
  };
}

// `openLink(link, invited)`, `openJson(text)`: show another station, with the problems; `openSheet()`:
// this part of the document.
export function makeShare(engine, { openLink, openJson, setUnits, units, openSheet }) {
  const text = find('link-text');
  const say = (words) => {
    setText(find('copy-state'), words);
    find('copy-state').scrollIntoView({ block: 'nearest' });
  };
  const square = makeSquare(engine);
  const size = el('p');
  // What is said of the buttons stands right under them.
  find('copy-state').before(size);
  text.closest('.field').after(square.figure);

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
      sayOn(find('copy-link'), copied);
    } catch {
      offer();
    }
  });

  // What the phone's share sheet takes: the link, or the file where the link would be cut.
  const parcel = () => (fitsLink(engine) ? { title: 'Hearthsight station', url: fullLink(engine) }
    : { title: 'Hearthsight station', files: [fileOf(engine)] });
  const send = find('send-link');
  if (navigator.share) {
    send.addEventListener('click', async () => {
      try {
        await navigator.share(parcel());
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
    const problems = openLink(linkIn(given), isInvitation(given));
    setText(find('paste-error'), problems.length > 0 ? refusal(problems) : '');
    if (problems.length === 0) find('paste-text').value = '';
  });

  find('save-file').addEventListener('click', () => saveFile(engine));
  const take = async (file) => say(await openFile(file, openJson) || opened);
  listenToPicker(take);

  for (const radio of document.querySelectorAll('input[name="units"]')) {
    radio.addEventListener('change', () => setUnits(radio.value));
  }

  return {
    // Hands the link on, by the phone's share sheet or the clipboard, and says how that went, also on
    // the `button` that asked for it; with `invite` it asks who opens it to add themselves.
    async hand({ invite, button }) {
      if (!fitsLink(engine)) return tooLong;
      const url = invite ? addressOf(invitation(engine.link())) : fullLink(engine);
      try {
        if (navigator.share) {
          await navigator.share({ title: 'Hearthsight station', url });
          return '';
        }
        await navigator.clipboard.writeText(url);
        sayOn(button, copied);
        return 'Copied: paste it into a message.';
      } catch (error) {
        if (error.name === 'AbortError') return '';
      }
      openSheet();
      offer();
      return '';
    },
    // `tell(text)`: a drop lands anywhere, so what is wrong with it is said above everything.
    heedDrops: (tell) => listenToDrops({
      async take(file) {
        const refused = await openFile(file, openJson);
        if (refused) tell(refused);
      },
      refuse: tell,
    }),
    update() {
      for (const radio of document.querySelectorAll('input[name="units"]')) radio.checked = radio.value === units();
      square.update();
      const fits = fitsLink(engine);
      setHidden(send, !navigator.share || !(fits || navigator.canShare?.(parcel())));
      setText(send, fits ? 'Send link' : 'Send file');
      setText(size, fits ? '' : tooLong);
      const link = fullLink(engine);
      if (text.value !== link) {
        text.value = link;
        // What was copied is no longer the present link.
        if (find('copy-state').textContent === copied) setText(find('copy-state'), '');
      }
    },
  };
}
