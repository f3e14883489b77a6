/** Takes the exit status of the command that ran. */
export type Status = (code: number) => void;

/** What stands for `<sheet>`. */
export const sheetWords = 'a path, a name, or - for standard input';
