/** The file name under which the methods stand beside the pages that link to them. */
export const methodsPageName = 'methods.html';
