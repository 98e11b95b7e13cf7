/** The parts that each set is made of, and how many parts there are. */
export interface RecordParts {
  readonly of: readonly Uint32Array[];
  readonly count: number;
}

/** Sets of records of one table, each known by its number; the same records are the same set. */
export class RecordSets {
  readonly table: string;
  readonly #sets: Uint32Array[] = [];
  readonly #alike = new Map<string, number[]>();
  #parts: RecordParts | null = null;

  constructor(table: string) {
    this.table = table;
  }

  /** The number of a set of ascending rows. */
  numberOf(rows: Uint32Array): number {
    let hash = 0x811c9dc5;
    for (const row of rows) hash = Math.imul(hash ^ row, 0x01000193);
    const key = `${rows.length} ${hash}`;
    const alike = this.#alike.get(key) ?? [];
    const known = alike.find((number) => same(this.#sets[number]!, rows));
    if (known !== undefined) return known;
    const number = this.#sets.push(rows) - 1;
    this.#alike.set(key, [...alike, number]);
    this.#parts = null;
    return number;
  }

  /** How many sets there are. */
  get count(): number {
    return this.#sets.length;
  }

  /** The rows of a set, ascending. */
  rowsOf(number: number): Uint32Array {
    return this.#sets[number]!;
  }

  /** How many records a set has. */
  sizeOf(number: number): number {
    return this.#sets[number]!.length;
  }

  /** Every set as the parts that it is made of, where records that are in the same sets are one part. */
  parts(): RecordParts {
    this.#parts ??= this.#split();
    return this.#parts;
  }

  #split(): RecordParts {
    const most = this.#sets.reduce((sum, rows) => Math.max(sum, (rows.at(-1) ?? -1) + 1), 0);
    const partOf = new Uint32Array(most);
    let count = 1;
    for (const rows of this.#sets) {
      const split = new Map<number, number>();
      for (const row of rows) {
        const part = partOf[row]!;
        const own = split.get(part) ?? count++;
        split.set(part, own);
        partOf[row] = own;
      }
    }
    const numbers = new Map<number, number>();
    const numbered = (part: number): number => {
      const known = numbers.get(part) ?? numbers.size;
      numbers.set(part, known);
      return known;
    };
    const of = this.#sets.map((rows) => {
      return Uint32Array.from(new Set(Array.from(rows, (row) => partOf[row]!)), numbered);
    });
    return { of, count: numbers.size };
  }
}

function same(one: Uint32Array, other: Uint32Array): boolean {
  return one.length === other.length && one.every((row, at) => row === other[at]);
}

/** The rows of a set that are in none of some others; all ascend. */
export function without(rows: Uint32Array, others: readonly Uint32Array[]): Uint32Array {
  const inOthers = new Set<number>();
  for (const other of others) for (const row of other) inOthers.add(row);
  return rows.filter((row) => !inOthers.has(row));
}
