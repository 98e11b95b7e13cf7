/** What a command's end tells the shell. */
export const exitCodes = { fine: 0, problems: 1, wrongUse: 2 } as const;
