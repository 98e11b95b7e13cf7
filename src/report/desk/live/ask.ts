import type { DeskState } from '../desk-state.js';
import { marksHere } from './parts.js';

let namesMark = '';
let version = '';

/** Asks the desk for something and gives the notebook's state after it; null where the desk does not answer. */
export async function ask(address: string, what: object): Promise<DeskState | null> {
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ ...what, having: { marks: marksHere(), namesMark, version } }),
    });
    if (!response.ok) return null;
    const state = (await response.json()) as DeskState;
    namesMark = state.namesMark;
    version = state.version;
    return state;
  } catch {
    return null;
  }
}

/** Calls back whenever the desk says that something has changed. */
export function whenChanged(address: string, call: () => void): void {
  new EventSource(address).addEventListener('changed', call);
}
