import { describe, test } from 'vitest';
import { expectAlike, expectSheet, rowsOf } from './alike.js';
import { type Cell, carriedPage } from './carried.js';
import type { Ask } from './records.js';
import { type ClusteredCounts, clusteredShare, difference, z95 } from './textbook.js';

type Grouped = ClusteredCounts & { readonly grouped: string };
type TwoLooks = ClusteredCounts & Readonly<Record<'looked_twice' | 'first_only', number>> & { readonly unit: string };

/**
 * What two looks say: how often the first finds what the second found; agreement on finds (Cicchetti DV, Feinstein AR 1990, J Clin
 * Epidemiol 43:551-558); kappa (Cohen J 1960, Educ Psychol Meas 20:37-46); those that both missed, with log-normal limits (Chapman
 * DG 1951, Univ California Publ Statist 1:131-160; Burnham KP and others 1987, p. 212).
 */
function twoLooks(counts: TwoLooks): Readonly<Record<string, Cell>> {
  const { cases: both, trials: second, first_only, looked_twice } = counts;
  const [first, second_only] = [both + first_only, second - both];
  const agreed = (looked_twice - first_only - second_only) / looked_twice;
  const chance = (first * second + (looked_twice - first) * (looked_twice - second)) / looked_twice ** 2;
  const missed = ((first + 1) * (second + 1)) / (both + 1) - 1 - (first + second_only);
  const variance = ((first + 1) * (second + 1) * first_only * second_only) / ((both + 1) ** 2 * (both + 2));
  const spread = Math.exp(z95 * Math.sqrt(Math.log(1 + variance / missed ** 2)));
  const found = {
    looked_twice,
    both,
    first_only,
    second_only,
    first_finds: clusteredShare(counts),
    positive: (2 * both) / (first + second),
  };
  return {
    ...found,
    kappa: (agreed - chance) / (1 - chance),
    missed: missed === 0 ? 0 : [missed, missed / spread, missed * spread],
  };
}

/** Looks by themselves: hidden parts, means, sides, pairs, second looks, seasons. */
export function recountLooks(ask: Ask): void {
  const [training, season] = [carriedPage('training-focus'), carriedPage('season')];
  const shares = (view: string) => ask<Grouped>(`from share_by('${view}')`);
  const valuesOnly = (rows: readonly Readonly<Record<string, Cell>>[], ...columns: readonly string[]) =>
    rows.map((row) => ({
      ...row,
      ...Object.fromEntries(columns.map((name) => [name, [row[name]].flat()[0] ?? null])),
    }));

  describe('what single looks say', () => {
    test('hidden parts and plain ones, and the means by which mussels were found', async () => {
      const found = await shares('found_by_hidden');
      const skipped = await shares('skipped_by_hidden');
      const wanted = rowsOf(
        skipped,
        ({ grouped }) => grouped,
        (row) => ({
          carried: row.trials,
          skipped: clusteredShare(row),
          found_fouled: clusteredShare(found.find(({ grouped }) => grouped === row.grouped)!),
        }),
      );
      expectSheet(training.sheet('by_hidden'), 'hidden', wanted);
      const means = rowsOf(
        await shares('found_by_means'),
        ({ grouped }) => grouped,
        (row) => ({ looks: row.cases, recorded: row.trials, share: clusteredShare(row) }),
      );
      expectSheet(training.sheet('means'), 'found_by', means);
    });

    test('what else was found', async () => {
      const found = await ask<{ found: string; looks: number; craft: number }>(`
        select found, count(*) as looks, count(distinct inspection) as craft from carried_looks where state = 'fouled' group by found`);
      expectSheet(
        season.sheet('other_findings'),
        'finding',
        rowsOf(
          found,
          (row) => row.found,
          ({ looks, craft }) => ({ looks, craft }),
        ),
      );
    });

    test('port and starboard, and parts fouled together', async () => {
      const sides = await ask<
        Record<'part', string> &
          Record<'both_looked' | 'one_looked' | 'neither' | 'port_only' | 'starboard_only' | 'both_fouled', number>
      >('from sides_compared');
      expectSheet(
        training.sheet('both_sides'),
        'component',
        rowsOf(
          sides,
          ({ part }) => part,
          ({ part: _, both_fouled, ...counts }) => ({ ...counts, both: both_fouled }),
        ),
      );
      const pairs = await ask<
        Record<'part' | 'other', string> & Record<'looked_both' | 'either' | 'together' | 'times_chance', number>
      >('from parts_together');
      const wanted = rowsOf(
        pairs,
        ({ part, other }) => `${part}/${other}`,
        ({ looked_both, either, together, times_chance }) => ({
          looked_both,
          either,
          both: together,
          together: together / either,
          times_chance,
        }),
      );
      expectSheet(valuesOnly(training.sheet('together'), 'together'), 'component with', wanted);
    });

    test('second looks beside first ones', async () => {
      const rows = async (from: number) =>
        rowsOf(await ask<TwoLooks>(`from two_looks(${from})`), ({ unit }) => unit, twoLooks);
      expectSheet(valuesOnly(season.sheet('second_looks'), 'kappa'), 'unit', await rows(2025));
      expectSheet(valuesOnly(training.sheet('detection'), 'kappa'), 'unit', await rows(2023));
    });

    test('craft arriving, and fouled parts, season against season', async () => {
      const seasons = [...(await shares('arriving_by_season'))].sort((a, b) => Number(a.grouped) - Number(b.grouped));
      const rows = season.sheet('arrivals_by_season');
      for (const [at, counts] of seasons.entries()) {
        const earlier = seasons[at - 1];
        expectAlike(rows[at]!, {
          season: Number(counts.grouped),
          full: counts.trials,
          cases: counts.cases,
          rate: clusteredShare(counts),
          difference: earlier === undefined ? null : difference(counts, earlier),
        });
        if (earlier === undefined) continue;
        const ratio = counts.cases / counts.trials / (earlier.cases / earlier.trials);
        expectAlike({ ratio: [rows[at]!['ratio']].flat()[0] }, { ratio });
      }
      const sharesIn = async (view: string) =>
        new Map(
          (
            await ask<
              Record<'part', string> & Record<'fouled' | 'craft' | 'craft_clusters' | 'craft_residuals', number>
            >(`from sites_of('${view}')`)
          ).map(
            (site) =>
              [
                site.part,
                clusteredShare({
                  cases: site.fouled,
                  trials: site.craft,
                  clusters: site.craft_clusters,
                  residuals: site.craft_residuals,
                }),
              ] as const,
          ),
        );
      const [before, now] = [await sharesIn('last_season'), await sharesIn('this_season')];
      const changes = [...now].flatMap(([part, later]) => {
        const earlier = before.get(part)!;
        return later[0] + earlier[0] === 0 ? [] : [[part, { earlier, later, change: later[0] - earlier[0] }] as const];
      });
      expectSheet(valuesOnly(training.sheet('changes'), 'change'), 'component', Object.fromEntries(changes));
    });
  });
}
