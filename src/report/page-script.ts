export const pageScript = '';
