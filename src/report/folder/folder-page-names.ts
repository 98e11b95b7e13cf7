/** The name of the page that lists a folder's pages; a page of its own, and no notebook's. */
export const folderPageName = 'index.html';

/** The name of the page of changes that a report leaves in its folder when it is asked to compare. */
export const changesPageName = 'changes.html';
