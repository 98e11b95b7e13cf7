import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Asks the recounted records in SQL; numbers of the answer are plain ones, whatever their type there. */
export type Ask = <T extends object>(question: string) => Promise<readonly T[]>;

const folder = fileURLToPath(new URL('sql/', import.meta.url));

async function duckDB() {
  try {
    return await import('@duckdb/node-api');
  } catch (problem) {
    throw new Error(`nothing is recounted: DuckDB, a devDependency, does not load; run npm ci. ${problem}`);
  }
}

function plain(value: unknown): unknown {
  return typeof value === 'bigint' ? Number(value) : value;
}

/**
 * Reads the demo's raw exports into records by the statements in `sql/`, one file after the other, and gives the way to ask
 * them. The rules there are those of the crosswalks and of `rampbook rules`, written again by hand.
 */
export async function recountedRecords(exports: string): Promise<Ask> {
  const { DuckDBInstance } = await duckDB();
  const connection = await (await DuckDBInstance.create(':memory:')).connect();
  await connection.run(`set variable exports = '${exports.replaceAll("'", "''")}'`);
  for (const file of readdirSync(folder).sort()) {
    await connection.run(readFileSync(`${folder}${file}`, 'utf8')).catch((problem: unknown) => {
      throw new Error(`tests/recount/sql/${file}: ${problem}`);
    });
  }
  return async <T extends object>(question: string) => {
    const answer = await connection.runAndReadAll(question);
    const rows = answer
      .getRowObjectsJS()
      .map((row) => Object.entries(row).map(([name, value]) => [name, plain(value)]));
    return rows.map((row) => Object.fromEntries(row) as T);
  };
}
