/** The file name under which the reference of the language stands beside the pages that link to it. */
export const languagePageName = 'language.html';
