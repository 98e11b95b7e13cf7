import { inTable, type Problem, wholeFile } from '../../problem/problem.js';
import { plainDialect } from '../read-dialect.js';
import { met, RecordScanner } from '../record-scanner.js';
import type { Alias } from './alias.js';

const headings = ['name', 'region', 'waterbody'] as const;

function stop(file: string, line: number, seen: string, wanted: string, remedy: string): Problem {
  const place = line === 0 ? wholeFile(file) : inTable(file, line, null, null);
  return { code: 'crosswalk-wrong-value', severity: 'stops', place, seen, wanted, remedy };
}

/**
 * The aliases of a CSV file with the columns name, region and waterbody; other columns are passed over, so that a filled-in
 * `unmatched.csv` is one. Rows whose waterbody is still empty are no aliases.
 */
export function readAliasFile(
  file: string,
  bytes: Uint8Array,
): { readonly aliases: readonly Alias[]; readonly problems: readonly Problem[] } {
  const scanner = new RecordScanner(plainDialect, Math.max(4, bytes.length));
  const text = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? bytes.subarray(3) : bytes;
  scanner.room().set(text);
  scanner.filled(text.length);
  scanner.filled(0);
  const cells = () => Array.from({ length: scanner.count }, (_, position) => scanner.cellText(position).trim());
  const header = scanner.next() === met.row ? cells() : [];
  const places = headings.map((heading) => header.indexOf(heading));
  if (places.includes(-1)) {
    const remedy = 'Name the columns so; others may stand beside them.';
    return { aliases: [], problems: [stop(file, 1, header.join(', '), `the columns ${headings.join(', ')}`, remedy)] };
  }
  const aliases: Alias[] = [];
  const problems: Problem[] = [];
  while (scanner.next() === met.row) {
    const row = cells();
    const [name, region, waterbody] = places.map((place) => row[place] ?? '');
    if (row.length !== header.length || scanner.broken) {
      const remedy = 'Look for a comma in a cell without quotes.';
      problems.push(stop(file, scanner.line, `${row.length} cells`, `${header.length} cells`, remedy));
    } else if (name !== '' && waterbody !== '') {
      aliases.push({ name: name!, region: region!, waterbody: waterbody! });
    }
  }
  return { aliases, problems };
}
