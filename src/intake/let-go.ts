import { MessageChannel, type MessagePort } from 'node:worker_threads';

const worthwhile = 1 << 20;

/** A port at whose other end nobody is; closed long before it is used, since closing takes a turn of the event loop. */
const nowhere = openNowhere();

function openNowhere(): MessagePort {
  const { port1, port2 } = new MessageChannel();
  port2.close();
  port1.unref();
  return port1;
}

/**
 * Gives back the memory of an array at once, which would otherwise wait for the next collection of garbage while as much is
 * asked for anew. The array, and every other over the same memory, is empty from then on: only whoever alone holds it may let
 * it go. Loops over arrays run a little slower in a thread that ever let one go, so that this is left to the end of the work.
 */
export function letGo({ buffer }: Uint8Array | Uint16Array | Uint32Array | Int32Array): void {
  if (!(buffer instanceof ArrayBuffer) || buffer.byteLength < worthwhile) return;
  // What is handed over is no longer held here; where nobody takes it, nobody holds it.
  nowhere.postMessage(null, [buffer]);
}
