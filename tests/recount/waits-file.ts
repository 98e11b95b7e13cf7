import type { Ask } from './records.js';

/** The known waits of 2025 as delimited text, in an order of their own: what the values in made-with-r.json were made of. */
export async function waitsFile(ask: Ask): Promise<string> {
  const rows = await ask<{ line: string }>(`
    select concat_ws(',', stage, station || ' ' || day, minutes::integer, course) as line
    from stages where season = 2025 and course <> 'unknown' order by stage, day, station, minutes, course, wash`);
  return `stage,day,minutes,course\n${rows.map(({ line }) => `${line}\n`).join('')}`;
}
