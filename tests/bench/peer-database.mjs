// The same exports in a general database: read, repeats dropped, joined and counted, with no check of any cell. This is the
// floor that import is held against. Words: the folder of the load.
import { DuckDBInstance } from '@duckdb/node-api';

const [folder] = process.argv.slice(2);
const instance = await DuckDBInstance.create(':memory:', { threads: '2' });
const connection = await instance.connect();
const reads = (file, settings = 'header = true, ignore_errors = true') =>
  `read_csv('${folder}/${file}.csv', ${settings})`;
const texts = 'header = true, ignore_errors = true, all_varchar = true';
for (const statement of [
  `create table inspections as select distinct on (inspection_id) * from ${reads('inspections', texts)}`,
  `create table checks as from ${reads('component_checks')}`,
  `create table washes as from ${reads('decontaminations', texts)}`,
]) {
  await connection.run(statement);
}
const counted = [];
for (const question of [
  `select station, started_at[1:7] as month, count(*), count(*) filter (outcome in ('quarantine', 'decon_required'))
   from inspections group by all`,
  `select component, watercraft_type, count(*) filter (checked = 'Y'), count(found)
   from checks join inspections using (inspection_id) group by all`,
  `select method, quantile_cont(epoch(try_cast(w.finished_at as timestamp)) - epoch(try_cast(i.started_at as timestamp)),
   [0.1, 0.5, 0.9]) from washes w join inspections i using (inspection_id) group by all`,
]) {
  counted.push((await connection.runAndReadAll(question)).currentRowCount);
}
process.stdout.write(`${JSON.stringify(counted)}\n`);
