import { watch } from 'node:fs';
import { DeskAnswers } from './desk-answers.js';
import type { DeskSeason } from './desk-season.js';
import { type LocalServer, startLocalServer } from './local-server.js';

/** How often files are looked at besides, in milliseconds, for file systems that tell of no changes. */
const lookEvery = 1_000;

/** The desk of a folder, served on this machine; with `only`, one notebook's report that follows its document. */
export async function startDesk(
  folder: string,
  season: DeskSeason,
  port: number,
  only: string | null = null,
): Promise<LocalServer> {
  const answers = new DeskAnswers(folder, season, only);
  const server = await startLocalServer(port, async (request) => answers.answer(request));
  const watcher = watch(folder, { persistent: false }, () => answers.lookAtFiles());
  watcher.on('error', () => watcher.close());
  const timer = setInterval(() => {
    answers.lookAtFiles();
    void season.renew().then((isNew) => {
      if (isNew) answers.tell(null);
    });
  }, lookEvery);
  timer.unref();
  return {
    address: server.address,
    close: async () => {
      clearInterval(timer);
      watcher.close();
      answers.close();
      await server.close();
    },
  };
}
