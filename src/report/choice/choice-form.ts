import type { Element } from 'hast';
import { h } from 'hastscript';
import { headed, inWords } from '../anchor.js';
import type { LivePage } from '../page-context.js';
import { choiceWords } from './choice-words.js';

/** The fields and years that a reader may choose, as a form that the page's script makes ready. */
export function choiceForm({ offers, years, seasons }: LivePage): Element[] {
  const fields = offers.map(({ field, label, values }) =>
    choice(label, `only.${field}`, '', [{ value: '', label: choiceWords.all }, ...values]),
  );
  const inputs = years.map(({ name, value }) => {
    const known = seasons.includes(value) ? seasons : [...seasons, value].sort();
    return choice(
      inWords(name),
      `with.${name}`,
      value,
      known.map((season) => ({ value: season, label: season })),
    );
  });
  return [
    h(
      'form',
      {
        id: 'choice',
        className: ['choice'],
        ariaLabel: choiceWords.head,
        autoComplete: 'off',
        dataUnable: choiceWords.unable,
      },
      [
        h('p', { className: ['choice-head'] }, [choiceWords.head]),
        ...fields,
        ...inputs,
        h('button', { type: 'reset', disabled: true }, [choiceWords.everything]),
        h('noscript', [h('p', [choiceWords.noScript])]),
      ],
    ),
  ];
}

/** Which choice the page shows, in sight and on paper; a page on which nothing is chosen is marked, since a brief need not say so. */
export function shownChoice(said: readonly string[], isWhole = false): Element {
  const properties = { id: 'shown', className: ['shown-choice'], role: 'status', dataWhole: isWhole ? '' : null };
  return h('div', properties, [h('p', [said.join(' ')])]);
}

function choice(
  label: string,
  name: string,
  chosen: string,
  values: readonly { readonly value: string; readonly label: string }[],
): Element {
  return h('label', [
    h('span', [headed(label)]),
    h(
      'select',
      { name, disabled: true },
      values.map(({ value, label: shown }) => h('option', { value, selected: value === chosen }, [shown])),
    ),
  ]);
}
