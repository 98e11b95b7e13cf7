/**
 * Marks from now on what is scrolled under a root, so that it stays so when its part is replaced. To ask every region where it
 * stands would have the page laid out for each part.
 */
export function noteScrolling(root: Document): void {
  root.addEventListener('scroll', ({ target }) => target instanceof Element && markScrolled(target), { capture: true });
}

/** Marks a region as one that its reader scrolled. */
export function markScrolled(region: Element): void {
  region.setAttribute('data-scrolled', '');
}

/** Whether a region was scrolled. */
export function isScrolled(region: Element): boolean {
  return region.hasAttribute('data-scrolled');
}
