import { readSeason } from '../../carried/carried-season.js';
import { LiveReport } from '../../carried/live-report.js';
import { readAddress, type WrittenChoice, writeAddress } from '../../choice/choice-address.js';
import { choiceSaid } from '../../choice/choice-said.js';
import { choiceWords } from '../../choice/choice-words.js';
import { choiceOf, filterOffers } from '../../choice/filter-offers.js';
import { narrowScreen } from '../../style/narrow-screen.js';
import { inflated } from '../inflate.js';
import { ChoiceControls } from './choice-controls.js';
import { CountAgain } from './count-again.js';

/** Lets a page follow what its reader chooses, and its address keep it. */
async function start(form: HTMLFormElement, carried: HTMLElement): Promise<void> {
  const season = readSeason(await inflated(carried.textContent));
  carried.remove();
  const report = new LiveReport(season, matchMedia(narrowScreen).matches ? 'narrow' : 'wide');
  const counting = new CountAgain(report);
  const controls = new ChoiceControls(form);
  const offers = filterOffers(season.book, season.head.filters);
  const tables = season.head.book.tables
    .filter(({ columns, clusterOf }) => columns.length > 0 || clusterOf !== null)
    .map(({ name }) => season.book.tables.get(name)!);
  let part = readAddress(location.hash).part;
  let shown = '';

  const say = (text: string, problems = ''): void => {
    const place = document.getElementById('shown')!;
    place.toggleAttribute('data-whole', text === choiceWords.shownAll);
    const line = document.createElement('p');
    line.textContent = text;
    const wrong = document.createElement('template');
    wrong.innerHTML = problems;
    place.replaceChildren(line, wrong.content);
  };

  const keep = (choice: WrittenChoice): void => {
    const address = writeAddress({ part, choice });
    if (location.hash !== '' || address !== '') history.replaceState(null, '', `#${address}`);
    controls.follow(choice);
  };

  const show = async (choice: WrittenChoice): Promise<void> => {
    const key = writeAddress({ part: '', choice });
    if (key === shown) {
      keep(choice);
      return;
    }
    shown = key;
    if (key === '') {
      counting.restore();
      form.removeAttribute('aria-busy');
      keep(choice);
      say(choiceWords.shownAll);
      return;
    }
    try {
      const only = choiceOf(offers, choice.only);
      // What is in sight is counted at once, before anything else changes the page, which would have to be laid out first.
      const counted = counting.count({ only, inputs: choice.inputs });
      form.setAttribute('aria-busy', 'true');
      say(choiceWords.working);
      keep(choice);
      const whole = await counted;
      if (!whole) return;
      const said = choiceSaid(choice, { offers, inputs: controls.inputs, tables, whole: report.whole });
      say([...said, choiceWords.lines].join(' '), report.renderProblems());
    } catch {
      counting.giveUp();
      say(choiceWords.failed);
    }
    form.removeAttribute('aria-busy');
  };

  // Whoever reaches for a control is about to choose. What cannot be counted is told where it is chosen.
  const prepare = ({ target }: Event): void => {
    const reaches = isControl(target) ? target.form === form : form.contains(target as Node | null);
    if (reaches) void counting.prepare().catch(() => {});
  };
  for (const reached of ['focusin', 'pointerover', 'pointerdown']) document.addEventListener(reached, prepare);
  let asked = 0;
  const follow = (): void => {
    cancelAnimationFrame(asked);
    asked = requestAnimationFrame(() => void show(controls.read()));
  };
  document.addEventListener('input', ({ target }) => {
    if (isControl(target) && target.form === form) follow();
  });
  // The form's fields have their usual values only after the event.
  form.addEventListener('reset', () => setTimeout(follow));
  addEventListener('hashchange', () => {
    const address = readAddress(location.hash);
    part = address.part;
    if (location.hash.includes('?')) controls.write(address.choice);
    follow();
  });
  if (location.hash.includes('?')) controls.write(readAddress(location.hash).choice);
  await show(controls.read());
}

/** The controls of a page stand in its form or, as inputs in their table, belong to it. */
function isControl(target: EventTarget | null): target is HTMLInputElement | HTMLSelectElement {
  return target instanceof HTMLInputElement || target instanceof HTMLSelectElement;
}

const form = document.querySelector<HTMLFormElement>('#choice');
const carried = document.getElementById('carried-season');
if (form !== null && carried !== null) void start(form, carried);
