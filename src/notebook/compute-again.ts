import { reachedBy } from '../formula/definitions.js';
import type { Declared } from './declared.js';
import { type Item, Making } from './making.js';
import type { ComputedAgain, Knowledge } from './workings.js';

/**
 * Figures as they would be with another value of an input: all that the input reaches on the way to the figure is computed
 * again beside what is known, which stays as it is.
 */
export function computeAgain(
  knowledge: Knowledge,
  declared: ReadonlyMap<string, Declared>,
  itemOf: ReadonlyMap<string, Item>,
): ComputedAgain {
  const { definitions } = knowledge;
  // Plans are found without the solver, which checks the one that is shown and not those that are only tried.
  const { solver: _, ...book } = knowledge.book;
  return {
    reaches: (input, figure) => reachedBy(new Set([input]), figure, definitions).includes(figure),
    with: (input, written, figure) => {
      const item = declared.get(input);
      if (item?.kind !== 'input') return undefined;
      const values = new Map(knowledge.values);
      const again = { inputs: new Set(definitions.inputs), made: new Map(definitions.made), values };
      const changed: Knowledge = {
        ...knowledge,
        book,
        values,
        kinds: new Map(knowledge.kinds),
        keys: new Map(knowledge.keys),
        problems: [],
        definitions: again,
        environment: { ...knowledge.environment, book, known: values, definitions: again },
      };
      const making = new Making(changed);
      making.input({ ...item, input: { ...item.input, value: { ...item.input.value, text: written } } });
      for (const name of reachedBy(new Set([input]), figure, definitions)) {
        const reached = itemOf.get(name);
        if (reached !== undefined) making.compute(reached);
      }
      return values.get(figure);
    },
  };
}
