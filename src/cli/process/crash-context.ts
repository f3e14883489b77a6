/** The sheet that the command works on: for the last words of a program that broke. */
export const crashContext: { path: string | null } = { path: null };
