/**
 * Makes an element's children those of another with as few changes as it can, so that focus, selection and scroll stay where
 * they are and nothing flashes. A place that is held open is left alone.
 */
export function morph(old: Element, wanted: Element): void {
  if (old.hasAttribute('data-held') || old.isEqualNode(wanted)) return;
  morphAttributes(old, wanted);
  let at: ChildNode | null = old.firstChild;
  for (const child of [...wanted.childNodes]) {
    const found = at === null ? null : laterAlike(at, child);
    if (found === null) old.insertBefore(child, at);
    else {
      while (at !== null && at !== found) at = removed(at);
      if (found instanceof Element && child instanceof Element) morph(found, child);
      else if (found.nodeValue !== child.nodeValue) {
        found.nodeValue = child.nodeValue;
        markFresh(found);
      }
      at = found.nextSibling;
    }
  }
  while (at !== null) at = removed(at);
}

function removed(node: ChildNode): ChildNode | null {
  const next = node.nextSibling;
  node.remove();
  return next;
}

/** The node itself where it is of the same kind as the one wanted, or a later sibling that has the same key. */
function laterAlike(node: ChildNode, wanted: ChildNode): ChildNode | null {
  if (alike(node, wanted)) return node;
  if (keyOf(wanted) === '') return null;
  for (let later = node.nextSibling; later !== null; later = later.nextSibling) if (alike(later, wanted)) return later;
  return null;
}

function alike(one: ChildNode, other: ChildNode): boolean {
  return one.nodeName === other.nodeName && keyOf(one) === keyOf(other);
}

function keyOf(node: ChildNode): string {
  if (!(node instanceof HTMLElement)) return '';
  const { holds, line } = node.dataset;
  return holds ?? (line === undefined ? '' : `line ${line}`);
}

function morphAttributes(old: Element, wanted: Element): void {
  for (const { name } of [...old.attributes]) {
    // Whether an account is open, and which button of a table Tab reaches, is the reader's own doing.
    if (!wanted.hasAttribute(name) && name !== 'open' && name !== 'tabindex') old.removeAttribute(name);
  }
  for (const { name, value } of [...wanted.attributes])
    if (old.getAttribute(name) !== value) old.setAttribute(name, value);
}

/** Marks a value that has just changed, for a moment. */
function markFresh(node: ChildNode): void {
  const value = node.parentElement?.closest('.shown, .part.sheet td');
  if (value === null || value === undefined) return;
  value.classList.add('fresh');
  setTimeout(() => value.classList.remove('fresh'), 700);
}
