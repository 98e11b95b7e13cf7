import type { ServerResponse } from 'node:http';
import { newNotebookName, newNotebookText } from '../notebook/new-notebook.js';
import { traceCellAt } from '../notebook/trace.js';
import { cellTexts } from '../report/cell-accounts.js';
import { seasonsIn } from '../report/choice/filter-offers.js';
import { contentPolicy } from '../report/content-policy.js';
import { deskPage, type LocalPage, listPage, watchPage } from '../report/desk/desk-page.js';
import type { Having } from '../report/desk/desk-state.js';
import { languageReference } from '../report/language-page.js';
import { languagePageName } from '../report/language-page-name.js';
import { methodsReference } from '../report/methods-page.js';
import { methodsPageName } from '../report/methods-page-name.js';
import { makeNotebook, notebookPath, notebooksIn } from './desk-folder.js';
import type { DeskSeason } from './desk-season.js';
import { DeskSession, type EditOutcome, type OpenText } from './desk-session.js';
import { deskState, partsOf, reportPartsOf } from './desk-state-of.js';
import type { Admitted, Answer } from './local-server.js';
import { readEdit } from './read-edit.js';

const mostListening = 32;
const nothingSaid: EditOutcome = { refused: null, line: null };

/** The desk of one folder: its open notebooks, the pages that listen, and what each request is answered. */
export class DeskAnswers {
  private readonly folder: string;
  private readonly season: DeskSeason;
  /** The only notebook that is shown, and only shown; null where all may be worked at. */
  private readonly only: string | null;
  private readonly sessions = new Map<string, DeskSession>();
  private readonly listening = new Map<ServerResponse, string>();

  constructor(folder: string, season: DeskSeason, only: string | null) {
    this.folder = folder;
    this.season = season;
    this.only = only;
  }

  /** Looks at the files of all open notebooks and tells the pages of those that changed. */
  lookAtFiles(): void {
    for (const session of this.sessions.values()) {
      if (!session.look()) continue;
      if (this.only !== null) session.follow();
      this.tell(session.name);
    }
  }

  /** Tells the open pages of a notebook, or of all, that something has changed. */
  tell(name: string | null): void {
    for (const [response, of] of this.listening)
      if (name === null || of === name) response.write('event: changed\ndata:\n\n');
  }

  /** Ends what is kept open. */
  close(): void {
    for (const response of this.listening.keys()) response.end();
  }

  /** What a request is answered. */
  answer({ method, path, body }: Admitted): Answer {
    const [name = '', what = ''] = path;
    if (path.length > 2) return nothingThere;
    if (method === 'GET' && path.at(-1) === languagePageName) return page(languageReference());
    if (method === 'GET' && path.at(-1) === methodsPageName) return page(methodsReference());
    if (name === '') {
      if (what !== '' || this.only !== null) return nothingThere;
      return method === 'GET' ? this.list() : this.make(body);
    }
    const session = this.session(name);
    if (session === null) return nothingThere;
    if (method === 'GET') return this.shown(session, what);
    if (what === 'cell') return cellAnswer(session, body);
    const having = havingIn(body);
    return having === null ? malformed : this.done(session, what, body as Readonly<Record<string, unknown>>, having);
  }

  private session(name: string): DeskSession | null {
    if (this.only !== null && name !== this.only) return null;
    const kept = this.sessions.get(name);
    if (kept !== undefined) return kept;
    const path = notebookPath(this.folder, name);
    if (path === null) return null;
    const session = new DeskSession(path, name, this.season);
    this.sessions.set(name, session);
    return session;
  }

  private list(): Answer {
    const notebooks = notebooksIn(this.folder).flatMap((file) => {
      const session = this.session(file);
      return session === null ? [] : [{ file, title: session.title }];
    });
    return page(listPage(this.folder, notebooks));
  }

  /** Makes a new notebook and says where it is, or why there is none. */
  private make(body: unknown): Answer {
    const typed = (body as { readonly make?: unknown } | null)?.make;
    if (typeof typed !== 'string') return malformed;
    const named = newNotebookName(typed);
    if ('refused' in named) return json(named);
    const season = seasonsIn(this.season.book).at(-1) ?? '';
    const refused = makeNotebook(this.folder, named.file, newNotebookText(named.file, season));
    return json(refused === null ? named : { refused });
  }

  private shown(session: DeskSession, what: string): Answer {
    session.look();
    const { open, name } = session;
    const { title } = open.read.document;
    if (what === 'report') return page(watchPage(title, name, reportPartsOf(session, open)));
    if (what === 'events') return this.listen(name);
    return what === '' && this.only === null ? page(deskPage(title, name, partsOf(session, open))) : nothingThere;
  }

  private listen(name: string): Answer {
    if (this.listening.size >= mostListening) return said(503, 'Too many pages are open.');
    return {
      stream: (response) => {
        this.listening.set(response, name);
        response.on('close', () => this.listening.delete(response));
        response.write(': listening\n\n');
      },
    };
  }

  private done(session: DeskSession, what: string, body: Readonly<Record<string, unknown>>, having: Having): Answer {
    if (what === 'report') {
      const { open } = session;
      return json(deskState(session, open, reportPartsOf(session, open), nothingSaid, having, false));
    }
    if (this.only !== null) return nothingThere;
    const state = (open: OpenText, outcome: EditOutcome): Answer =>
      json(deskState(session, open, partsOf(session, open), outcome, having, true));
    const stale = having.version !== '' && having.version !== session.open.version;
    switch (what) {
      case 'state':
        return state(session.open, nothingSaid);
      case 'try':
      case 'edit': {
        const edit = readEdit(body.edit);
        if (edit === null) return malformed;
        if (stale) return state(session.open, { refused: 'this notebook was changed on another page', line: null });
        if (what === 'try') {
          const tried = session.tryOut(edit);
          return state(tried, tried);
        }
        return this.after(session, session.edit(edit), state);
      }
      case 'undo':
      case 'redo':
        return this.after(session, session.step(what), state);
      case 'take':
      case 'keep':
        return typeof body.fingerprint === 'string'
          ? this.after(session, session[what](body.fingerprint), state)
          : malformed;
      default:
        return nothingThere;
    }
  }

  private after(
    session: DeskSession,
    outcome: EditOutcome,
    state: (open: OpenText, outcome: EditOutcome) => Answer,
  ): Answer {
    const answer = state(session.open, outcome);
    this.tell(session.name);
    return answer;
  }
}

function havingIn(body: unknown): Having | null {
  const having = (body as { readonly having?: Partial<Having> } | null)?.having;
  if (typeof having !== 'object' || having === null || typeof having.marks !== 'object' || having.marks === null)
    return null;
  const { marks, namesMark, version } = having;
  return typeof namesMark === 'string' && typeof version === 'string' ? { marks, namesMark, version } : null;
}

/** How one cell of a sheet was made; nothing where there is no such cell any more. */
function cellAnswer({ open: { workings } }: DeskSession, asked: unknown): Answer {
  const { sheet: name, column, row } = (asked ?? {}) as Readonly<Record<string, unknown>>;
  if (typeof name !== 'string' || typeof column !== 'string' || typeof row !== 'number') return malformed;
  const trace = traceCellAt(workings, name, column, row);
  const shownAs = workings.notebook.sheets.get(name)?.columns.find((one) => one.name === column)?.shownAs ?? '';
  return json({ texts: trace === null ? [] : cellTexts(trace, trace.result, shownAs) });
}

function page({ html, style, script }: LocalPage): Answer {
  const policy = `${contentPolicy(style, [script])}; connect-src 'self'; frame-ancestors 'none'`;
  return { status: 200, type: 'text/html; charset=utf-8', body: html, policy };
}

function json(value: object): Answer {
  return { status: 200, type: 'application/json; charset=utf-8', body: JSON.stringify(value), policy: '' };
}

function said(status: number, text: string): Answer {
  return { status, type: 'text/plain; charset=utf-8', body: `${text}\n`, policy: '' };
}

const nothingThere = said(404, 'There is nothing here.');
const malformed = said(400, 'This is nothing that the desk understands.');
