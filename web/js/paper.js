// What is made to be printed or read alone: the safety sheet, the whole report.

import { setText } from './dom.js';
import { placeOf, save } from './files.js';

const find = (id) => document.getElementById(id);
// Where inches are in use the paper is Letter.
const paperOf = (units) => (units === 'inch' ? 'letter' : 'a4');
const htmlFile = (text) => new Blob([text], { type: 'text/html' });

export function listenToPaper(engine) {
  const say = (words) => setText(find('paper-state'), words);
  // The sheet opens in its own tab, under this page's policy, so its looks are links to our own
  // files; what is saved has them inside.
  const theme = document.querySelector('link[href$="theme.css"]').href;
  const looks = [theme, new URL('report.css', theme).href];
  find('open-safety').addEventListener('click', () => {
    const style = looks.map((url) => `<link rel="stylesheet" href="${url.replaceAll('&', '&amp;')}"/>`).join('\n');
    if (!window.open(placeOf(htmlFile(engine.safetyHtml(style))), '_blank')) {
      say('This browser opens no second page: save the whole report instead.');
    }
  });
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
