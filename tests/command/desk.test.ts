import { createHash } from 'node:crypto';
import {
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { deskCommand, watchCommand } from '../../src/command/desk.js';
import { DeskSeason } from '../../src/command/desk-season.js';
import { mostBytes } from '../../src/command/local-server.js';
import { startDesk } from '../../src/command/start-desk.js';
import type { DocumentEdit } from '../../src/notebook/edit/document-edit.js';
import type { DeskState } from '../../src/report/desk/desk-state.js';
import { newFolder, rampbook } from './run.js';
import { writeSmallSeason } from './small-season.js';

const lines = [
  '# Small season',
  '',
  'Looked over: {inspected}.',
  '',
  '| input | value |',
  '|---|---|',
  '| factor | 2 |',
  '',
  '| figure   | formula             | shown as |',
  '|----------|---------------------|----------|',
  '| inspected | count(inspections) | whole    |',
  '| more     | inspected * factor  | whole    |',
  '',
];
const text = lines.join('\n');
const base = newFolder();
const folder = join(base, 'notebooks');
const path = join(folder, 'small.md');
let season: DeskSeason;
let desk: Awaited<ReturnType<typeof startDesk>>;

beforeAll(async () => {
  const small = writeSmallSeason();
  expect(rampbook(['import', small.crosswalk, '--from', small.exports, '--store', small.store]).exitCode).toBe(0);
  const opened = await DeskSeason.open(small.store);
  if ('problems' in opened) throw new Error('the store did not open');
  season = opened;
  mkdirSync(folder);
});

beforeEach(async () => {
  await desk?.close();
  writeFileSync(path, text);
  desk = await startDesk(folder, season, 0);
});

afterAll(async () => {
  await desk?.close();
  rmSync(base, { recursive: true, force: true });
});

const nothing = { marks: {}, namesMark: '', version: '' };
const json = { 'content-type': 'application/json' };

/** Asks as the desk's own page would: from its origin. */
async function post(what: string, body: object, name = 'small.md'): Promise<Response> {
  const origin = new URL(desk.address).origin;
  const all = JSON.stringify({ having: nothing, ...body });
  return fetch(`${desk.address}${name}/${what}`, { method: 'POST', headers: { ...json, origin }, body: all });
}

async function state(what: string, body: object = {}): Promise<DeskState> {
  const response = await post(what, body);
  expect(response.status).toBe(200);
  return (await response.json()) as DeskState;
}

const cell = (line: number, was: string, now: string): DocumentEdit => {
  return { change: 'cell', line, column: lines[line - 1]!.indexOf(was, 2) + 1, was, now };
};
const factor = (now: string): { edit: DocumentEdit } => ({ edit: cell(7, '2', now) });
const shown = ({ parts }: DeskState, words: string): boolean =>
  parts.some(({ html }) => html?.includes(words) === true);

describe('a new notebook', () => {
  const make = async (name: unknown, to = desk.address): Promise<{ file?: string; refused?: string } | number> => {
    const origin = new URL(to).origin;
    const body = JSON.stringify({ make: name });
    const response = await fetch(to, { method: 'POST', headers: { ...json, origin }, body });
    return response.ok ? ((await response.json()) as { file?: string; refused?: string }) : response.status;
  };

  test('is made in the folder, without a problem, and can be worked at', async () => {
    expect(await make(' Early ramps ')).toEqual({ file: 'Early-ramps.md' });
    const page = await (await fetch(`${desk.address}Early-ramps.md`)).text();
    expect(page).toContain('<h1>Early ramps</h1>');
    expect(page).not.toContain('class="wrong"');
    // The small season has one year, and three full inspections in it of which one was intercepted.
    const written = readFileSync(join(folder, 'Early-ramps.md'), 'utf8');
    expect(written).toContain('| this_season | 2025  | year |');
    rmSync(join(folder, 'Early-ramps.md'));
  });

  test('never takes the place of a file, leaves the folder, or bears a name that some systems cannot keep', async () => {
    for (const name of [
      'small',
      'small.md',
      'SMALL',
      '',
      '  ',
      '../out',
      'a/b',
      'a\\b',
      '.hidden',
      'nul',
      'ä',
      'x'.repeat(61),
      'a\0b',
    ]) {
      expect(await make(name), name).toEqual({ refused: expect.any(String) });
    }
    expect(await make(7)).toBe(400);
    expect(readdirSync(folder)).toEqual(['small.md']);
    expect(readdirSync(base)).not.toContain('out.md');
    expect(readFileSync(path, 'utf8')).toBe(text);
    const watched = await startDesk(folder, season, 0, 'small.md');
    expect(await make('another', watched.address)).toBe(404);
    await watched.close();
    expect(readdirSync(folder)).toEqual(['small.md']);
  });
});

describe('an edit', () => {
  test('is in the file at once, in its own line only, and brings what follows from it', async () => {
    const before = await state('state');
    const after = await state('edit', {
      ...factor('5'),
      having: { ...nothing, marks: marks(before), version: before.version },
    });
    const written = readFileSync(path, 'utf8').split('\n');
    expect(written.flatMap((line, at) => (line === lines[at] ? [] : [at + 1]))).toEqual([7]);
    expect(written).toHaveLength(lines.length);
    // 3 inspections × 5; only the parts with the input and the figures are sent.
    expect(after.parts.filter(({ html }) => html !== undefined).map(({ key }) => key)).toEqual([
      'inputs-1',
      'figures-1',
    ]);
    expect(shown(after, '>15<')).toBe(true);
    expect(after).toMatchObject({ unsaved: false, refused: null, elsewhere: null, canUndo: true });
  });

  test('that is only tried shows what it would bring and changes nothing', async () => {
    const tried = await state('try', factor('7'));
    expect(shown(tried, '>21<')).toBe(true);
    expect(shown(await state('try', factor('seven')), 'wanted')).toBe(true);
    expect(readFileSync(path, 'utf8')).toBe(text);
    expect((await state('state')).canUndo).toBe(false);
  });

  test('is undone and done again, each time in the file', async () => {
    await state('edit', factor('5'));
    const undone = await state('undo');
    expect([readFileSync(path, 'utf8'), undone.canUndo, undone.canRedo]).toEqual([text, false, true]);
    await state('redo');
    expect(readFileSync(path, 'utf8')).toContain('| factor | 5 |');
    expect((await state('redo')).refused).toContain('nothing to redo');
  });

  test('made for another text is refused', async () => {
    const { version } = await state('state');
    await state('edit', factor('5'));
    const late = await state('edit', { edit: { change: 'take row', line: 11 }, having: { ...nothing, version } });
    expect(late.refused).toContain('changed on another page');
    expect(readFileSync(path, 'utf8')).toContain('| inspected |');
  });

  test('gives names with units and meanings, once', async () => {
    const first = await state('state');
    expect(first.names).toContainEqual(expect.objectContaining({ name: 'factor', kind: 'input' }));
    expect(first.names).toContainEqual(expect.objectContaining({ name: 'length_ft', kind: 'field', unit: 'feet' }));
    expect(first.names!.every(({ name }) => name !== '')).toBe(true);
    const again = await state('state', { having: { ...nothing, namesMark: first.namesMark } });
    expect(again.names).toBeUndefined();
  });
});

function marks({ parts }: DeskState): Record<string, string> {
  return Object.fromEntries(parts.map(({ key, mark }) => [key, mark]));
}

describe('a file that was changed elsewhere', () => {
  const other = text.replace('Small season', 'Another title');

  test('is shown and not overwritten', async () => {
    await state('state');
    writeFileSync(path, other);
    const after = await state('edit', factor('5'));
    expect(readFileSync(path, 'utf8')).toBe(other);
    expect(after).toMatchObject({ unsaved: true, refused: null });
    expect(after.elsewhere!.lines).toContainEqual({ line: 1, here: '# Small season', inFile: '# Another title' });
  });

  test('can be taken over, and what stood here can be had back', async () => {
    await state('state');
    writeFileSync(path, other);
    const { elsewhere } = await state('edit', factor('5'));
    const taken = await state('take', { fingerprint: elsewhere!.fingerprint });
    expect([shown(taken, 'Another title'), taken.unsaved, taken.elsewhere]).toEqual([true, false, null]);
    await state('undo');
    expect(readFileSync(path, 'utf8')).toBe(text.replace('| factor | 2 |', '| factor | 5 |'));
  });

  test('is written over only as it was shown', async () => {
    await state('state');
    writeFileSync(path, other);
    const { elsewhere } = await state('edit', factor('5'));
    writeFileSync(path, `${other}More.\n`);
    const again = await state('keep', { fingerprint: elsewhere!.fingerprint });
    expect([again.refused, readFileSync(path, 'utf8')]).toEqual([
      'the file was changed once more; look again',
      `${other}More.\n`,
    ]);
    await state('keep', { fingerprint: again.elsewhere!.fingerprint });
    expect(readFileSync(path, 'utf8')).toBe(text.replace('| factor | 2 |', '| factor | 5 |'));
  });

  test('is told to the open page', async () => {
    await state('state');
    const stop = new AbortController();
    const response = await fetch(`${desk.address}small.md/events`, { signal: stop.signal });
    const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
    let told = '';
    writeFileSync(path, other);
    while (!told.includes('event: changed')) told += (await reader.read()).value ?? '';
    stop.abort();
    expect((await state('state')).elsewhere).not.toBeNull();
  });
});

/** A raw request, for what fetch would not send. */
function raw(options: {
  method?: string;
  path: string;
  headers?: Record<string, string>;
  body?: string;
}): Promise<{ status: number; headers: Record<string, unknown> }> {
  const { port } = new URL(desk.address);
  return new Promise((resolve, reject) => {
    const asked = request(
      { host: '127.0.0.1', port, method: options.method ?? 'GET', path: options.path, headers: options.headers ?? {} },
      (response) => {
        response.resume();
        response.on('end', () => resolve({ status: response.statusCode!, headers: response.headers }));
      },
    );
    asked.on('error', reject);
    asked.end(options.body);
  });
}

describe('the desk answers nobody but its own pages', () => {
  const home = (): string => new URL(desk.address).pathname;
  const host = (): string => new URL(desk.address).host;
  const edit = JSON.stringify({ having: nothing, edit: cell(7, '2', '9') });
  const origin = (): string => `http://${host()}`;

  test('a wrong token finds nothing', async () => {
    const wrong = home().replace(/.\/$/, (end) => (end === 'A/' ? 'B/' : 'A/'));
    for (const at of ['/', '/small.md', wrong, `${wrong}small.md`, `${home().slice(0, -2)}/`]) {
      expect([at, (await raw({ path: at })).status]).toEqual([at, 404]);
    }
    expect((await raw({ path: home() })).status).toBe(200);
  });

  test('another Host is turned away, even with the token', async () => {
    for (const name of ['example.org', `example.org:${host().split(':')[1]}`, '127.0.0.1']) {
      expect([name, (await raw({ path: home(), headers: { host: name } })).status]).toEqual([name, 421]);
    }
  });

  test('another origin can neither read nor change, nor can a change without any', async () => {
    const at = `${home()}small.md/edit`;
    for (const headers of [
      { ...json, origin: 'http://example.org' },
      { ...json, origin: 'null' },
      { ...json, origin: origin().replace('http:', 'https:') },
      { ...json },
      { ...json, origin: origin(), 'sec-fetch-site': 'cross-site' },
    ]) {
      expect([headers, (await raw({ method: 'POST', path: at, headers, body: edit })).status]).toEqual([headers, 403]);
    }
    expect((await raw({ path: home(), headers: { origin: 'http://example.org' } })).status).toBe(403);
    expect((await raw({ path: home(), headers: { 'sec-fetch-site': 'cross-site' } })).status).toBe(403);
    expect(readFileSync(path, 'utf8')).toBe(text);
  });

  test('a form, another method, too much, or what is no JSON changes nothing', async () => {
    const at = `${home()}small.md/edit`;
    const own = { ...json, origin: origin() };
    const status = async (method: string, headers: Record<string, string>, body: string): Promise<number> =>
      (await raw({ method, path: at, headers, body })).status;
    expect(await status('POST', { origin: origin(), 'content-type': 'text/plain' }, edit)).toBe(415);
    expect(await status('PUT', own, edit)).toBe(405);
    expect(await status('POST', own, '{')).toBe(400);
    expect(await status('POST', own, '{"edit":{"change":"cell"}}')).toBe(400);
    expect(await status('POST', own, JSON.stringify({ having: nothing, edit: { change: 'cell', line: 1e9 } }))).toBe(
      400,
    );
    const long = JSON.stringify({ having: nothing, edit: cell(7, '2', 'x'.repeat(mostBytes)) });
    expect(await status('POST', { ...own, 'content-length': String(long.length) }, long)).toBe(413);
    expect(await status('POST', { ...own, 'transfer-encoding': 'chunked' }, long)).toBe(413);
    expect(readFileSync(path, 'utf8')).toBe(text);
  });

  test('no address leads out of the folder of notebooks', async () => {
    writeFileSync(join(base, 'outside.md'), '# Outside');
    symlinkSync(join(base, 'outside.md'), join(folder, 'link.md'));
    symlinkSync(base, join(folder, 'up'));
    mkdirSync(join(folder, 'folder.md'));
    for (const name of [
      '..%2Foutside.md',
      '%2e%2e/outside.md',
      'link.md',
      'up%2Foutside.md',
      'up',
      'folder.md',
      '..%5Coutside.md',
      '%00.md',
      '.hidden.md',
    ]) {
      expect([name, (await raw({ path: home() + name })).status]).toEqual([name, 404]);
      expect([name, (await post('edit', factor('9'), name)).status]).toEqual([name, 404]);
    }
    expect(readFileSync(join(base, 'outside.md'), 'utf8')).toBe('# Outside');
    const list = await (await fetch(desk.address)).text();
    expect([list.includes('small.md'), list.includes('link.md')]).toEqual([true, false]);
    for (const name of ['link.md', 'up']) rmSync(join(folder, name));
    rmSync(join(folder, 'folder.md'), { recursive: true });
  });

  test('a notebook that becomes a link out of the folder while it is open is not written through', async () => {
    await state('state');
    writeFileSync(join(base, 'outside.md'), text);
    rmSync(path);
    symlinkSync(join(base, 'outside.md'), path);
    await state('edit', factor('5'));
    expect(readFileSync(join(base, 'outside.md'), 'utf8')).toBe(text);
    rmSync(path);
  });

  test('a notebook that is not UTF-8, or becomes so while it is open, keeps its bytes', async () => {
    const latin = Buffer.from(text.replace('Small', 'Petite, \u00e0 la'), 'latin1');
    writeFileSync(path, latin);
    expect((await post('edit', factor('9'))).status).toBe(404);
    expect(readFileSync(path).equals(latin)).toBe(true);
    writeFileSync(path, text);
    await state('state');
    writeFileSync(path, latin);
    await state('edit', factor('9'));
    expect(readFileSync(path).equals(latin)).toBe(true);
  });

  test('a second name of the same file outside keeps what it had', async () => {
    const twin = join(base, 'twin.md');
    linkSync(path, twin);
    await state('edit', factor('5'));
    expect([readFileSync(twin, 'utf8'), readFileSync(path, 'utf8').includes('| 5 |')]).toEqual([text, true]);
    rmSync(twin);
  });

  test('every answer carries a strict policy, and pages let in their own script only', async () => {
    const { headers } = await raw({ path: `${home()}small.md` });
    expect(headers['content-security-policy']).toMatch(
      /^default-src 'none'; style-src 'sha256-[^']+'; script-src 'sha256-[^']+'; base-uri 'none'; form-action 'none'; connect-src 'self'; frame-ancestors 'none'$/,
    );
    expect(headers).toMatchObject({
      'referrer-policy': 'no-referrer',
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
    });
    for (const at of ['/', `${home()}none.md`]) {
      const { headers: other } = await raw({ path: at });
      expect(other['content-security-policy']).toContain("default-src 'none'");
    }
  });
});

test('what is remembered from edit to edit shows what a new desk shows', async () => {
  const sheet = [
    'Sheet by_type: each watercraft_type of inspections, highest looked first.',
    '',
    '| column | formula | shown as |',
    '|---|---|---|',
    '| looked | count() | whole |',
    '| times  | looked * factor | whole |',
    '| found  | rate(count(where outcome is "intercepted"), looked) | per 1,000 |',
    '',
    '![Looked over](bars?sheet=by_type&value=looked)',
    '',
  ];
  const steps = [
    (before: string) => before.replace('| factor | 2 |', '| factor | 3 |'),
    (before: string) => `A line more.\n\n${before}`,
    (before: string) => before.replace('looked * factor', 'looked * factor * 2'),
    (before: string) => before.replace('| count() | whole', '| count() | one decimal'),
    (before: string) => before.replace('highest looked', 'lowest looked'),
    (before: string) => before.replace('looked * factor', 'looked * facto'),
    (before: string) => before.replace('"intercepted"', '"cleared"').replace('looked * facto ', 'looked * factor '),
    (before: string) => before.replace('| factor | 3 |', '| factor | 2 |'),
  ];
  let now = [...lines, ...sheet].join('\n');
  const views = async (of: typeof desk): Promise<string[]> => {
    const origin = new URL(of.address).origin;
    const body = JSON.stringify({ having: nothing });
    const asked = ['state', 'report'].map(async (what) => {
      const response = await fetch(`${of.address}small.md/${what}`, {
        method: 'POST',
        headers: { ...json, origin },
        body,
      });
      return ((await response.json()) as DeskState).parts.map(({ html }) => html).join('\n');
    });
    return Promise.all(asked);
  };
  for (const step of [(before: string) => before, ...steps]) {
    now = step(now);
    writeFileSync(path, now);
    await state('take', { fingerprint: createHash('sha256').update(now).digest('hex') });
    const fresh = await startDesk(folder, season, 0);
    expect(await views(desk)).toEqual(await views(fresh));
    await fresh.close();
  }
});

test('what is written keeps the rights of the file and leaves nothing beside it', async () => {
  const { mode } = statSync(path);
  await state('edit', factor('5'));
  expect([statSync(path).mode, readdirSync(folder), existsSync(path)]).toEqual([mode, ['small.md'], true]);
});

test('a notebook that is only watched follows its file and can not be changed', async () => {
  const watched = await startDesk(folder, season, 0, 'small.md');
  const origin = new URL(watched.address).origin;
  const ask = (what: string): Promise<Response> =>
    fetch(`${watched.address}small.md/${what}`, {
      method: 'POST',
      headers: { ...json, origin },
      body: JSON.stringify({ having: nothing, ...factor('9') }),
    });
  const page = await (await fetch(`${watched.address}small.md/report`)).text();
  expect(page).toContain('Small season');
  expect((await ask('edit')).status).toBe(404);
  expect([(await fetch(watched.address)).status, (await fetch(`${watched.address}small.md`)).status]).toEqual([
    404, 404,
  ]);
  const stop = new AbortController();
  const reader = (await fetch(`${watched.address}small.md/events`, { signal: stop.signal })).body!.getReader();
  await reader.read();
  writeFileSync(path, text.replace('| factor | 2 |', '| factor | 8 |'));
  await reader.read();
  stop.abort();
  // 3 inspections × 8.
  expect(((await (await ask('report')).json()) as DeskState).parts.some(({ html }) => html?.includes('>24<'))).toBe(
    true,
  );
  await watched.close();
});

test('wrong use is told: no folder, no store, no port', async () => {
  const said = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const none = join(base, 'none');
  const ends = [
    await deskCommand({ place: none, store: none }),
    await deskCommand({ place: folder, store: none }),
    await watchCommand({ place: join(folder, 'none.md'), store: none }),
    await deskCommand({ place: folder, store: none, port: 'x' }),
  ];
  const codes = said.mock.calls.map(([line]) => /\[([a-z-]+)\]/.exec(String(line))?.[1]);
  said.mockRestore();
  expect([ends, codes]).toEqual([
    [1, 1, 1, 1],
    ['not-a-folder', 'no-such-store', 'no-such-file', 'bad-port'],
  ]);
});
