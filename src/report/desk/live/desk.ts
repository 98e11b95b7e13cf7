import type { AddedPart, DocumentEdit } from '../../../notebook/edit/document-edit.js';
import type { KnownName } from '../../../notebook/known-names.js';
import { say } from '../../live/say.js';
import type { DeskState } from '../desk-state.js';
import { partActs, rowActs } from './acts.js';
import { ask, whenChanged } from './ask.js';
import { showElsewhere } from './elsewhere.js';
import { editByKey, editingKeys, steps } from './keys.js';
import { numberOf, openParts, showParts } from './parts.js';
import { readying } from './readied.js';
import { columnsBeside, headLine } from './sheet-head.js';
import { Slip } from './slip.js';
import { buttonOf, focusLine, lineOf, makeTabStop, neighbour, partOf, placeIn, settleTabStops } from './slots.js';

const address = location.pathname;
const file = document.getElementById('notebook')!.dataset.file!;
const ready = readying(address);
let names: readonly KnownName[] = [];
let held: Slip | null = null;

function show(state: DeskState): void {
  if (state.names !== undefined) names = state.names;
  showParts(state, ready);
  held?.showWrong();
  showElsewhere(state, (way, fingerprint) => void settle(way, fingerprint));
  for (const [id, can] of [
    ['undo', state.canUndo],
    ['redo', state.canRedo],
  ] as const) {
    (document.getElementById(id) as HTMLButtonElement).disabled = !can;
  }
  settleTabStops();
}

// One change after the other: each is made for what the one before it left.
let last: Promise<void> = Promise.resolve();

function inTurn(task: () => Promise<void>): Promise<void> {
  last = last.then(task);
  return last;
}

/** Makes a change, shows what it brings, and looks where it was made. */
function make(edit: DocumentEdit, at: { line: number; place: string | null }): Promise<void> {
  return inTurn(() => makeNow(edit, at));
}

async function makeNow(edit: DocumentEdit, at: { line: number; place: string | null }): Promise<void> {
  const before = held;
  const focused = document.activeElement;
  const state = await ask(`${address}/edit`, { edit });
  if (state === null) return say('away', '');
  // What was refused stays open, so that nothing typed is lost.
  if (state.refused !== null) return tell(state);
  // Whoever has gone elsewhere meanwhile is left there, and a place that was opened meanwhile stays open.
  const hasStayed = document.activeElement === focused;
  if (held === before) close();
  show(state);
  if (held === null && hasStayed) focusLine(state.line ?? at.line, state.line === null ? at.place : null);
  tell(state);
}

function tell(state: DeskState): void {
  if (state.refused !== null) say('refused', state.refused);
  else say(state.unsaved ? 'waits' : 'done', file);
}

function settle(way: 'take' | 'keep' | 'undo' | 'redo', fingerprint: string): Promise<void> {
  return inTurn(() => settleNow(way, fingerprint));
}

async function settleNow(way: 'take' | 'keep' | 'undo' | 'redo', fingerprint: string): Promise<void> {
  const before = held;
  const state = await ask(`${address}/${way}`, { fingerprint });
  if (state === null) return say('away', '');
  if (held === before) close();
  show(state);
  if (way === 'undo' || way === 'redo') say(way === 'undo' ? 'undone' : 'redone', '');
  else tell(state);
}

async function refresh(): Promise<void> {
  if (held !== null) return tryOut(held.edit());
  const state = await ask(`${address}/state`, {});
  if (state !== null) show(state);
}

// One trial at a time, and the newest next: a slow answer must not pile up behind a quick hand.
let trying: DocumentEdit | null = null;
let isAsking = false;

async function tryOut(edit: DocumentEdit): Promise<void> {
  trying = edit;
  if (isAsking) return;
  isAsking = true;
  while (trying !== null && held !== null) {
    const next: DocumentEdit = trying;
    trying = null;
    const state = await ask(`${address}/try`, { edit: next });
    if (state !== null && held !== null) show(state);
  }
  isAsking = false;
}

function close(): void {
  const slip = held;
  held = null;
  trying = null;
  slip?.close();
}

function open(slot: HTMLElement): void {
  const at = { line: lineOf(slot), place: placeIn(slot.dataset) };
  const change = (edit: DocumentEdit) => void make(edit, at);
  // What is written is put in before anything else is done, so that nothing typed is lost.
  const act = (edit: () => DocumentEdit) =>
    void inTurn(async () => {
      const written = held?.changed() ?? null;
      if (written !== null) await makeNow(written, at);
      if (written === null || held === null) await makeNow(edit(), at);
    });
  // A formula never stands on its own name.
  const own = slot.closest('.row')?.querySelector<HTMLElement>('.slot[data-holds=name]')?.dataset.text;
  const isWhole = slot.dataset.last !== undefined;
  const acts = isWhole ? partActs(slot, act, () => headLine(slot)) : rowActs(slot, act);
  held = new Slip(
    slot,
    {
      typed: (edit) => void tryOut(edit),
      putIn: (edit) => (edit === null ? void leave() : change(edit)),
      left: () => void leave(),
      names: () => [...columnsBeside(slot), ...names].filter(({ name }) => name !== own),
    },
    acts,
  );
}

async function leave(): Promise<void> {
  close();
  await refresh();
}

/** Opens a place; one that was open before is put in first. */
async function openNext(slot: HTMLElement): Promise<void> {
  const before = lineOf(slot);
  const place = placeIn(slot.dataset);
  // What was put in and is not answered yet must not be put in again.
  await last;
  if (held?.slot === slot) return;
  const line = slot.isConnected ? lineOf(slot) : before;
  if (held !== null) {
    const written = held.changed();
    if (written === null) close();
    else await make(written, { line, place });
    if (held !== null) return;
  }
  const found = slot.isConnected ? slot : focusLine(line, place);
  if (found !== null) open(found);
}

function arrange(button: HTMLElement): void {
  const part = partOf(button);
  const there = part.querySelector('.slip');
  if (there !== null) {
    there.remove();
    return;
  }
  const slip = document.createElement('div');
  slip.className = 'slip';
  const first = numberOf(part, 'first');
  const act = (edit: () => DocumentEdit) => void make(edit(), { line: first, place: null });
  slip.append(...partActs(button, act, () => numberOf(part, 'first')));
  button.parentElement!.after(slip);
  slip.querySelector('button')?.focus();
}

document.addEventListener('click', (event) => {
  const target = event.target as Element;
  const arranging = target.closest<HTMLElement>('button.arrange');
  if (arranging !== null) return arrange(arranging);
  const adding = target.closest<HTMLElement>('.atend [data-add]');
  if (adding !== null) {
    const below = numberOf(openParts().findLast((part) => numberOf(part, 'last') > 0) ?? document.body, 'last') || 0;
    return void make(
      { change: 'add part', below, part: adding.dataset.add as AddedPart },
      { line: below, place: null },
    );
  }
  const opening =
    target.closest('button.open') ??
    (target.closest('a, button, summary, .scroll') === null ? target.closest('.said') : null);
  const slot = opening?.closest<HTMLElement>('.slot');
  if (slot !== null && slot !== undefined && getSelection()?.isCollapsed !== false) void openNext(slot);
});

document.addEventListener('focusin', ({ target }) => {
  if (target instanceof HTMLButtonElement && target.matches('.slot[data-row] > button.open')) makeTabStop(target);
});

document.addEventListener('keydown', (event) => {
  const target = event.target as HTMLElement;
  if (target instanceof HTMLTextAreaElement) return;
  const isUndo = (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z';
  const slot = target.closest<HTMLElement>('.slot');
  const step = steps[event.key];
  if (isUndo) void settle(event.shiftKey ? 'redo' : 'undo', '');
  else if (slot === null) return;
  else if (event.altKey) {
    if (!editingKeys.has(event.key)) return;
    // Where the focus is once the changes before it are made: a quick hand moves a row twice.
    void inTurn(async () => {
      const here = document.activeElement?.closest<HTMLElement>('.slot') ?? slot;
      const edit = here.isConnected ? editByKey(event.key, here) : null;
      if (edit !== null) await makeNow(edit, { line: lineOf(here), place: placeIn(here.dataset) });
    });
  } else if (step !== undefined && slot.dataset.row !== undefined && !event.ctrlKey && !event.metaKey) {
    const next = neighbour(slot, ...step);
    if (next === null) return;
    buttonOf(next)?.focus();
  } else return;
  event.preventDefault();
});

document.getElementById('undo')!.addEventListener('click', () => void settle('undo', ''));
document.getElementById('redo')!.addEventListener('click', () => void settle('redo', ''));
whenChanged(`${address}/events`, () => void refresh());
for (const part of openParts()) ready(part)();
void refresh();
