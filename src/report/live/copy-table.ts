import { runsAsFormula } from '../../store/delimited.js';
import { say, wordOf } from './say.js';

/** Puts a button beside each sheet's download that copies its table as text with tabs. */
export function addCopying(root: ParentNode): void {
  if (navigator.clipboard === undefined) return;
  for (const sheet of root.querySelectorAll('.sheet')) {
    const table = sheet.querySelector('table');
    const downloads = sheet.querySelector('.downloads');
    if (table === null || downloads === null) continue;
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'copy';
    button.textContent = wordOf('copy');
    button.addEventListener('click', () => {
      const name = table.caption?.textContent ?? '';
      navigator.clipboard.writeText(tableText(table)).then(
        () => say('copied', name),
        () => say('notcopied', name),
      );
    });
    downloads.append(' ', button);
  }
}

/** A table as lines of cells with tabs between; the small lines of a cell follow its value in brackets. */
function tableText(table: HTMLTableElement): string {
  return [...table.rows].map((row) => [...row.cells].map(cellText).join('\t')).join('\n');
}

/** A number as pages show it, with its unit and nothing that calculates. */
const shownNumber = /^[+-]?\d[\d.,]*( ?[\p{L}%°$ ]*)$/u;

function cellText(cell: HTMLTableCellElement): string {
  const small = [...cell.querySelectorAll('.small')].map((line) => line.textContent).filter((line) => line !== '');
  const whole = [...cell.childNodes].filter((node) => !(node instanceof Element && node.matches('.small')));
  const value = whole.map((node) => node.textContent).join('');
  const text = (small.length === 0 ? value : `${value} (${small.join('; ')})`).replace(/\s+/g, ' ');
  // A table is copied to be pasted into a spreadsheet, which would run what begins as a formula does.
  return runsAsFormula(value.trim()) && !shownNumber.test(value.trim()) ? `'${text}` : text;
}
