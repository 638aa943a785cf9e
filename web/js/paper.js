// What is made to be printed or read alone: the safety sheet, the whole report.

import { setText } from './dom.js';
import { placeOf, save } from './files.js';

const find = (id) => document.getElementById(id);
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
