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
    // What a set makes of each part, and for which set that was last said: lists are far quicker than a map for each set.
    const madeOf: number[] = [0];
    const madeFor: number[] = [-1];
    this.#sets.forEach((rows, set) => {
      for (let at = 0; at < rows.length; at++) {
        const part = partOf[rows[at]!]!;
        if (madeFor[part] !== set) {
          madeFor[part] = set;
          madeOf[part] = madeOf.push(0) - 1;
          madeFor.push(-1);
        }
        partOf[rows[at]!] = madeOf[part]!;
      }
    });
    const numberOf = new Int32Array(madeOf.length).fill(-1);
    const seenIn = new Int32Array(madeOf.length).fill(-1);
    let count = 0;
    const of = this.#sets.map((rows, set) => {
      const parts: number[] = [];
      for (let at = 0; at < rows.length; at++) {
        const part = partOf[rows[at]!]!;
        if (seenIn[part] === set) continue;
        seenIn[part] = set;
        if (numberOf[part] === -1) numberOf[part] = count++;
        parts.push(numberOf[part]!);
      }
      return Uint32Array.from(parts);
    });
    return { of, count };
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
