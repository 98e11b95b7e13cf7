/**
 * The prefixes of registration numbers that are no postal codes, with the postal code of their state. All other prefixes of
 * the list are the postal code itself. 33 CFR part 173, appendix A (read at law.cornell.edu/cfr/text/33/part-173/appendix-A).
 */
const unlikePostal: Readonly<Record<string, string>> = {
  CF: 'CA',
  CL: 'CO',
  CM: 'MP',
  DL: 'DE',
  HA: 'HI',
  KA: 'KS',
  MC: 'MI',
  MI: 'MS',
  MS: 'MA',
  NB: 'NE',
  WN: 'WA',
  WS: 'WI',
};

/** The prefixes of the same list that are the state's postal code. */
const likePostal =
  'AK AL AR AS AZ CT DC FL GA GU IA ID IL IN KY LA MD ME MN MO MT NC ND NH NJ NM NV NY OH OK OR PA PR RI SC SD TN TX UT VA VI VT WV WY'.split(
    ' ',
  );

const regions: ReadonlyMap<string, string> = new Map([
  ...likePostal.map((code) => [code, code] as const),
  ...Object.entries(unlikePostal),
]);
const postal = new Set(regions.values());

/** The postal code of the state whose prefix a registration number begins with; null where none has it. */
export function regionOfPrefix(prefix: string): string | null {
  return regions.get(prefix.toUpperCase()) ?? null;
}

/** The two letters that a registration number begins with, in capitals: `CF 1234 AB`, `cf1234ab`; null where it has none. */
export function prefixOf(registration: string): string | null {
  return /^([A-Za-z]{2})(?:[\s-]*\d|$)/u.exec(registration.trim())?.[1]?.toUpperCase() ?? null;
}

/** Whether a text is a registration prefix and no state's postal code, such as CF for California. */
export function isPrefixOnly(text: string): boolean {
  return regions.has(text) && !postal.has(text);
}
