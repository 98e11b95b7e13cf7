import { type Document, isAlias, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from 'yaml';
import { nearestName } from '../problem/nearest.js';
import { inDocument, type Place, type Problem } from '../problem/problem.js';

/** One entry of a YAML map: its key as text, and the nodes that give both their places. */
export interface Entry {
  readonly key: string;
  readonly keyNode: Node;
  readonly value: Node;
}

/** A known word's list as part of a sentence. */
export function oneOf(words: Iterable<string>): string {
  return `one of ${[...words].join(', ')}`;
}

/** Reads a YAML document node by node; every mistake becomes a problem at its line and column, and reading goes on. */
export class YamlDocument {
  readonly problems: Problem[] = [];
  readonly file: string;
  readonly root: Node | null;
  readonly #document: Document;
  readonly #lines = new LineCounter();

  constructor(file: string, text: string) {
    this.file = file;
    this.#document = parseDocument(text, { lineCounter: this.#lines, prettyErrors: false });
    for (const error of this.#document.errors) {
      const { line, col } = this.#lines.linePos(error.pos[0]);
      this.problems.push({
        code: 'crosswalk-not-yaml',
        severity: 'stops',
        place: inDocument(file, line, col),
        seen: error.code.toLowerCase().replaceAll('_', ' '),
        wanted: 'YAML 1.2',
        remedy:
          error.code === 'DUPLICATE_KEY'
            ? 'This name stands twice in the same list: take one of the two out, or rename it.'
            : `Mend the YAML: ${error.message}`,
      });
    }
    this.root = (this.#document.contents as Node | null) ?? null;
  }

  placeOf(node: Node | null): Place {
    const at = node?.range?.[0];
    if (at === undefined) return inDocument(this.file, 1, 1);
    const { line, col } = this.#lines.linePos(at);
    return inDocument(this.file, line, col);
  }

  complain(code: string, node: Node | null, seen: string, wanted: string, remedy: string): void {
    this.problems.push({
      code: `crosswalk-${code}`,
      severity: 'stops',
      place: this.placeOf(node),
      seen: seen === '' ? 'nothing' : seen,
      wanted,
      remedy,
    });
  }

  /** Says that a word is none of the known ones, and which it may be meant for. */
  complainOfName(code: string, node: Node, seen: string, wanted: string, known: Iterable<string>): void {
    const words = [...known];
    const near = nearestName(seen, words);
    const list = words.length <= 40 ? ` Known: ${words.join(', ')}.` : '';
    this.complain(
      code,
      node,
      seen,
      wanted,
      near === null ? `Use a known name.${list}` : `Did you mean "${near}"?${list}`,
    );
  }

  /** A node with aliases followed. */
  resolved(node: Node | null): Node | null {
    return isAlias(node) ? (node.resolve(this.#document) ?? null) : node;
  }

  isMap(node: Node): boolean {
    return isMap(this.resolved(node));
  }

  isList(node: Node): boolean {
    return isSeq(this.resolved(node));
  }

  /** Whether a node says nothing: an empty value, `null` or `~`. */
  isNothing(node: Node): boolean {
    const plain = this.resolved(node);
    return plain === null || (isScalar(plain) && plain.value === null);
  }

  /** The entries of a map, in order; a problem and none where the node is no map. */
  entries(node: Node | null, what: string): readonly Entry[] {
    const map = this.resolved(node);
    if (!isMap(map)) {
      this.complain(
        'wrong-shape',
        node,
        this.#show(map),
        `${what}, as a map of names and values`,
        'Write name: value.',
      );
      return [];
    }
    return map.items.flatMap((pair) => {
      const keyNode = pair.key as Node;
      const key = this.#scalarText(keyNode);
      if (key === null) {
        this.complain('wrong-shape', keyNode, this.#show(keyNode), 'a plain name', 'Use text as the name.');
        return [];
      }
      // An entry without a value keeps the place of its key.
      return [{ key, keyNode, value: (pair.value as Node | null) ?? keyNode }];
    });
  }

  /** The settings of a map by name; unknown ones are problems, missing ones among the `needed`, and open questions. */
  settings(node: Node | null, what: string, known: readonly string[], needed: readonly string[]): Map<string, Node> {
    const found = new Map<string, Node>();
    for (const { key, keyNode, value } of this.entries(node, what)) {
      if (known.includes(key)) found.set(key, value);
      else if (key === 'open') this.#askAll(keyNode, value);
      else this.complainOfName('unknown-setting', keyNode, key, `a setting of ${what}`, known);
    }
    if (this.isMapOrNull(node)) {
      for (const name of needed) {
        if (found.has(name)) continue;
        this.complain('missing-setting', node, '', `the setting ${name} of ${what}`, `Add ${name}: ….`);
      }
    }
    return found;
  }

  /** Each question that a draft left open is a problem at its own line. */
  #askAll(keyNode: Node, value: Node): void {
    const list = this.resolved(value);
    for (const item of isSeq(list) ? (list.items as Node[]) : [value]) {
      const question = this.#scalarText(item) ?? '';
      const remedy = 'Decide, change the lines beside it, and take the entry under open away.';
      this.complain('open-question', item === value ? keyNode : item, question, 'an answer by a person', remedy);
    }
  }

  isMapOrNull(node: Node | null): boolean {
    return isMap(this.resolved(node));
  }

  /** A scalar's text as written, quotes left off; a problem and null where the node holds none. */
  text(node: Node, what: string): string | null {
    const text = this.#scalarText(node);
    if (text !== null) return text;
    this.complain('wrong-shape', node, this.#show(this.resolved(node)), what, `Write ${what}.`);
    return null;
  }

  /** The texts of a list; one scalar counts as a list of one. */
  texts(node: Node, what: string): readonly string[] {
    const list = this.resolved(node);
    if (!isSeq(list)) {
      const text = this.text(node, what);
      return text === null ? [] : [text];
    }
    return list.items.flatMap((item) => this.text(item as Node, what) ?? []);
  }

  /** The items of a list; a problem and none where the node is no list. */
  items(node: Node, what: string): readonly Node[] {
    const list = this.resolved(node);
    if (isSeq(list)) return list.items as Node[];
    this.complain('wrong-shape', node, this.#show(list), `${what}, as a list`, 'Begin each item with a hyphen.');
    return [];
  }

  /** A word among known ones; a problem and null for any other. */
  word(node: Node, what: string, known: readonly string[]): string | null {
    const text = this.text(node, what);
    if (text === null || known.includes(text)) return text;
    this.complainOfName('wrong-value', node, text, `${what}: ${oneOf(known)}`, known);
    return null;
  }

  #scalarText(node: Node | null): string | null {
    const plain = this.resolved(node);
    if (!isScalar(plain)) return null;
    if (typeof plain.value === 'string') return plain.value;
    return plain.source ?? String(plain.value);
  }

  #show(node: Node | null): string {
    if (node === null) return '';
    return isMap(node) ? 'a map' : isSeq(node) ? 'a list' : (this.#scalarText(node) ?? '');
  }
}
