import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { compile } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import { renderPage } from '../../src/report/page.js';
import { pageScript } from '../../src/report/page-script.js';
import { standingNotes, washCautions } from '../../src/report/standing-notes.js';
import { bundleScript } from './bundle-script.js';
import { number, prose, sampleContext, sampleNotebook } from './sample-notebook.js';

const { html, problems } = renderPage(sampleNotebook, sampleContext);
const unescaped = (text: string): string =>
  text.replaceAll('&#x26;', '&').replaceAll('&#x22;', '"').replaceAll('&#x3C;', '<');

describe('a page', () => {
  it('allows only its own style and script, by their hashes', () => {
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)![1]!.replaceAll('&#x27;', "'");
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toContain('unsafe');
    for (const element of ['style', 'script']) {
      const text = new RegExp(`<${element}>([\\s\\S]*?)</${element}>`).exec(html)![1]!;
      const hash = createHash('sha256').update(text).digest('base64');
      expect(policy).toContain(`${element}-src 'sha256-${hash}'`);
    }
    expect(html).not.toMatch(/\sstyle="/);
  });

  it('has no address that could be fetched', () => {
    expect(html).not.toMatch(/\s(src|srcset|poster|background|ping)=/);
    expect(html).not.toMatch(/<(link|iframe|object|embed|base|form)\b/);
    const besideDownloads = html.replace(/href="data:[^"]*"/g, '');
    expect(besideDownloads).not.toMatch(/@import|url\((?!#)/);
  });

  it('lets a heat map’s specification be saved, which Vega-Lite takes and in which every colour is written out', () => {
    const address = /href="data:application\/json;charset=utf-8,([^"]*)" download="[^"]*\.json"/.exec(html)![1]!;
    const specification = JSON.parse(decodeURIComponent(unescaped(address)));
    expect(JSON.stringify(specification)).not.toMatch(/var\(|url\(/);
    expect(JSON.stringify(specification)).toMatch(/"#[0-9a-f]{6}"/);
    const warnings: unknown[] = [];
    const logger = { level: () => logger, error: warn, warn, info: () => logger, debug: () => logger };
    function warn(...said: unknown[]): typeof logger {
      warnings.push(...said);
      return logger;
    }
    expect(compile(specification, { logger }).spec.marks?.length).toBeGreaterThan(0);
    expect(warnings).toEqual([]);
  });

  it('has every address once, and everything it leads to', () => {
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id!);
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
    const led = [...html.matchAll(/href="#([^"]*)"|url\(#([^)]*)\)|aria-(?:labelledby|describedby)="([^"]*)"/g)];
    expect(led.map(([, one, two, three]) => one ?? two ?? three!).filter((id) => !ids.includes(id))).toEqual([]);
  });

  it('prints the sum of rows: read = kept + set aside', () => {
    expect(html).toContain('25,217 rows read = 25,151 kept + 66 set aside');
    expect(html).toMatch(/not a code<\/th><td[^>]*>39</);
  });

  it('does not print a sum that is none', () => {
    const [first] = sampleContext.sum.files;
    const sum = { ...sampleContext.sum, files: [{ ...first!, kept: first!.kept - 1 }] };
    expect(() => renderPage(sampleNotebook, { ...sampleContext, sum })).toThrow('lakes/inspections-2025.csv');
  });

  it('carries its cautions, definitions, methods, fingerprints and date', () => {
    for (const words of [...standingNotes, ...washCautions]) expect(unescaped(html)).toContain(words);
    expect(html).toContain('Spending is taken as given');
    expect(html).toContain('Kaplan-Meier, log-log limits</li>');
    for (const mark of ['5b', 'c3', 'd4']) expect(html).toContain(mark.repeat(32));
    expect(html).toContain('Records up to 30 November 2025');
    expect(html).toContain('any water, damp surfaces included');
  });

  it('shows problems in their place and renders the rest', () => {
    expect(problems.map(({ code, place }) => [code, place.line])).toEqual([
      ['markup-left-out', 5],
      ['markup-left-out', 5],
      ['picture-left-out', 6],
      ['unknown-name', 5],
      ['unknown-column', 43],
      ['unknown-chart-option', 43],
    ]);
    // Three times in its place, and once in what the page carries of itself.
    expect(html.match(/units-differ/g)).toHaveLength(4);
    expect(html).toContain('<mark>{interseption}</mark>');
    // Seven charts, each drawn narrow too.
    expect(html.match(/<svg/g)).toHaveLength(7 + 7);
    expect(html.match(/class="drawing narrow"/g)).toHaveLength(7);
  });

  it('does not report again what the notebook reported', () => {
    const reported = problems.filter((problem) => problem.code === 'unknown-name');
    const notebook = { ...sampleNotebook, problems: [...sampleNotebook.problems, ...reported] };
    expect(renderPage(notebook, sampleContext).problems.map((problem) => problem.code)).not.toContain('unknown-name');
  });

  it('never shows a share without its denominator, nor a value without its interval or the reason', () => {
    expect(html).toContain('3.29 per 1,000</span> (95 % interval 2.41 to 4.42)');
    // In prose the value leads to its account, where the reason is, as it is in the table of figures.
    expect(html).toMatch(/href="#account-[^"]*"><span class="shown">34 min<\/span> \(no interval\)/);
    expect(html).toContain('no interval: fewer than 2 clusters');
    expect(html).toContain('71 of 21,574');
    expect(html).toContain('at most 4.90 (95 %, one-sided)');
    expect(html).not.toMatch(/NaN|undefined|Infinity|\[object/);
  });

  it('heads a sheet with its title, else with what it holds in words and without what its finding is told', () => {
    const captionOf = (title: string | undefined, sentence: string): string | undefined => {
      const { title: _, ...untold } = sampleNotebook.sheets.get('by_station')!;
      const sheet = { ...untold, ...(title === undefined ? {} : { title }), sentence };
      const sheets = new Map([...sampleNotebook.sheets, ['by_station', sheet]]);
      const { html } = renderPage({ ...sampleNotebook, sheets }, sampleContext);
      return /id="table-by-station-caption"><span>([^<]*)/.exec(html)?.[1];
    };
    expect(captionOf('Stations compared', 'Sheet by_station "Stations compared": each station of full.')).toBe(
      'Stations compared',
    );
    expect(captionOf(undefined, 'Sheet by_station: staff plan of open_days, by last_status, with hours 5.')).toBe(
      'By station: staff plan of open days, by last status',
    );
  });

  it('does not say again what an earlier sheet says of its method, but leads to it', () => {
    const said = ['Definition: one.', 'Method: two.', 'Source: three.'];
    const sheets = new Map(
      [...sampleNotebook.sheets].map(([name, sheet]) => [name, { ...sheet, notes: [...said, `Of ${name}.`] }]),
    );
    const page = renderPage({ ...sampleNotebook, sheets }, sampleContext).html;
    const shown = sampleNotebook.blocks.flatMap((block) => (block.kind === 'sheet' ? [block.name] : []));
    expect(shown.length).toBeGreaterThan(1);
    expect(page.match(/Definition: one\./g)).toHaveLength(1);
    for (const name of shown) expect(page).toContain(`Of ${name}.`);
    const id = shown[0]!.replaceAll('_', '-');
    expect(page.match(new RegExp(`as under <a href="#sheet-${id}"`, 'g'))).toHaveLength(shown.length - 1);
  });

  it('draws nothing of a sheet without rows, says so where the drawing would be, and calls it no mistake', () => {
    const of = (name: string, change: object) =>
      new Map([...sampleNotebook.sheets, [name, { ...sampleNotebook.sheets.get(name)!, ...change }]]);
    const empty = renderPage({ ...sampleNotebook, sheets: of('by_station', { rows: [] }) }, sampleContext);
    const whole = renderPage(sampleNotebook, sampleContext);
    expect(empty.problems).toEqual(whole.problems);
    const said = /Nothing fell into this sheet/g;
    expect([whole.html, empty.html].map((html) => html.match(said)?.length ?? 0)).toEqual([0, 3]);
    // A column that is not there is a mistake of the address, whether there are rows or not.
    const columns = sampleNotebook.sheets.get('by_station')!.columns.filter(({ name }) => name !== 'interception');
    const wrong = renderPage({ ...sampleNotebook, sheets: of('by_station', { rows: [], columns }) }, sampleContext);
    expect(wrong.problems.map(({ code }) => code)).toContain('unknown-column');
  });

  it('folds what stands behind a definition, and nothing else that is said of a sheet', () => {
    const [name, sheet] = [...sampleNotebook.sheets][0]!;
    const notes = ['Definition: one.', 'Denominator: two.', 'Source: three.', '12 rows are left out.'];
    const page = renderPage(
      { ...sampleNotebook, sheets: new Map([...sampleNotebook.sheets, [name, { ...sheet, notes }]]) },
      sampleContext,
    ).html;
    const folded = /<details class="behind">(.*?)<\/details>/.exec(page)?.[1] ?? '';
    const isFolded = (said: string): boolean => folded.includes(said);
    expect(notes.map(isFolded)).toEqual([false, true, true, false]);
    for (const said of notes) expect(page.includes(said), said).toBe(true);
  });

  it('tells what is calculated from inputs alone from what is counted', () => {
    const name = [...sampleNotebook.figures.keys()][0]!;
    const page = (given: object): string => {
      const figure = sampleNotebook.figures.get(name)!;
      const result = { ...number(5), ...given };
      const figures = new Map([...sampleNotebook.figures, [name, { ...figure, result }]]);
      return renderPage({ ...sampleNotebook, figures }, sampleContext).html;
    };
    expect(page({ given: true })).toContain('calculated from inputs, not estimated');
    expect(page({})).not.toContain('calculated from inputs');
  });

  it('says where a number stands that something from records decided which rows it counts', () => {
    const said = 'usual decides which rows are counted, and is taken as known';
    const figure = sampleNotebook.figures.get('interception')!;
    const sheet = sampleNotebook.sheets.get('by_station')!;
    const withCaution = <One extends { readonly kind: string }>(result: One): One =>
      result.kind === 'number' ? { ...result, cautions: [said] } : result;
    const page = renderPage(
      {
        ...sampleNotebook,
        figures: new Map([
          ...sampleNotebook.figures,
          ['interception', { ...figure, result: withCaution(figure.result) }],
        ]),
        sheets: new Map([
          ...sampleNotebook.sheets,
          ['by_station', { ...sheet, rows: sheet.rows.map(({ cells }) => ({ cells: cells.map(withCaution) })) }],
        ]),
      },
      sampleContext,
    ).html;
    const rows = [...page.matchAll(/<tr>[\s\S]*?<\/tr>/g)].map(([row]) => row);
    expect(rows.filter((row) => row.includes(said))).toHaveLength(1);
    expect(rows.find((row) => row.includes(said))).toContain('interception');
    expect(page.replace(/<details[\s\S]*?<\/details>/g, '')).toMatch(
      new RegExp(`<p class="note">Caution, [^<]*: ${said}`),
    );
  });

  it('gives an account of a figure: formula, records counted by file and line, and those left out and why', () => {
    const account = /<div id="account-interception">[\s\S]*?<\/dl>/.exec(html)![0].replace(/<[^>]*>/g, ' ');
    expect(account).toContain('rate(intercepted, inspected)');
    expect(unescaped(account)).toContain('71 of 25,151 rows of inspections: full where outcome is "intercepted"');
    expect(account).toContain('25,068 did not meet the conditions; 12 left open whether they meet them');
    expect(account).toContain('lakes/inspections-2025.csv: 71 rows, lines 17, 256, 495, 734, 973 and 66 more');
    expect(account).toContain('58 rows of the file of that table never came this far');
  });

  it('escapes what the records and the notebook hold', () => {
    const title = 'A </title><script>alert(1)</script> "quoted" \\ page';
    const notebook = {
      ...sampleNotebook,
      title,
      blocks: prose('Text & {wage}'),
      inputs: new Map([
        ['wage', { name: 'wage', value: number(1), unit: '<i>dollars</i>', source: '"><script>', line: 1 }],
      ]),
    };
    const page = renderPage(notebook, sampleContext).html;
    // The page's own script, and what it carries of itself, which no browser runs.
    expect(page.match(/<script/g)).toHaveLength(2);
    expect(page.match(/<\/script/g)).toHaveLength(2);
    expect(page.match(/<script id="carried-results" type="application\/json">/g)).toHaveLength(1);
    expect(page.match(/<\/style/g)).toHaveLength(1);
    expect(page).not.toContain('<i>');
  });

  it('is the same, byte for byte, in any time zone and locale', () => {
    const digest = (zone: string, locale: string): string =>
      execFileSync(process.execPath, ['--import', 'tsx', new URL('print-digest.ts', import.meta.url).pathname], {
        env: { ...process.env, TZ: zone, LC_ALL: locale, LANG: locale },
        encoding: 'utf8',
      }).trim();
    const here = createHash('sha256').update(html).digest('hex');
    expect([digest('Pacific/Kiritimati', 'de_DE.UTF-8'), digest('America/St_Johns', 'ar_EG.UTF-8')]).toEqual([
      here,
      here,
    ]);
  });

  it('has the script that its source makes', async () => {
    expect(pageScript).toBe(await bundleScript());
  });
});
