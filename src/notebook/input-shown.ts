import type { Result } from '../formula/result.js';
import type { Book } from '../record/book.js';

/** An input as pages show it: a code that names one thing in the records, such as a station, by the name it has there. */
export function inputShown(result: Result, { tables }: Book): Result {
  if (result.kind !== 'text') return result;
  const { text: code } = result;
  const names = new Set<string>();
  for (const { fields } of tables.values()) {
    for (const { labels } of fields.values()) {
      const label = labels?.get(code);
      if (label !== undefined) names.add(label);
    }
  }
  const [name] = names;
  return names.size === 1 && name !== undefined ? { kind: 'text', text: name, code } : result;
}
