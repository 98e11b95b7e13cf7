/** A choice as addresses and the command line write it: values by field, and inputs by name. */
export interface WrittenChoice {
  readonly only: ReadonlyMap<string, string>;
  readonly inputs: ReadonlyMap<string, string>;
}

/** Where a page's address leads: to a part of the page, and to a choice. */
export interface PageAddress {
  readonly part: string;
  readonly choice: WrittenChoice;
}

/** What stands before the name of an input in an address, so that it is told from a field of the records. */
const inputMark = 'with.';

/** Reads what stands behind the `#` of an address: `section-where?station=heron-point&with.this_season=2024`. */
export function readAddress(hash: string): PageAddress {
  const [part = '', ...rest] = hash.replace(/^#/, '').split('?');
  const only = new Map<string, string>();
  const inputs = new Map<string, string>();
  for (const [name, value] of new URLSearchParams(rest.join('?'))) {
    if (name.startsWith(inputMark)) inputs.set(name.slice(inputMark.length), value);
    else only.set(name, value);
  }
  return { part: decoded(part), choice: { only, inputs } };
}

/** What stands behind the `#` of an address that leads there; empty for the top of the page and no choice. */
export function writeAddress({ part, choice }: PageAddress): string {
  const words = new URLSearchParams([
    ...choice.only,
    ...[...choice.inputs].map(([name, value]): [string, string] => [inputMark + name, value]),
  ]);
  const said = words.toString();
  return said === '' ? encodeURIComponent(part) : `${encodeURIComponent(part)}?${said}`;
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
