/** What the lines are read in. */
export interface Window {
	readonly columns: number;
	readonly rows: number;
}

/** Under this a question and its choices leave the window before they are read. */
const leastWindow = { columns: 24, rows: 8 } as const;

/** That the window is too small for questions, with what they need; null where it is not. */
export function roomWords(window: Window | null): string | null {
	if (!window || (window.columns >= leastWindow.columns && window.rows >= leastWindow.rows)) return null;
	return `Needs more room: this window is ${window.columns} x ${window.rows}, ${leastWindow.columns} x ${leastWindow.rows} is the least.`;
}
