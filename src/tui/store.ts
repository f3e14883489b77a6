import type { App } from './app.ts';

interface Shown {
	readonly app: App;
	readonly columns: number;
	readonly rows: number;
}

/** The app knows its window, for keys that go by a page. */
const sized = ({ app, columns, rows }: Shown): Shown => ({
	app: app.window.columns === columns && app.window.rows === rows ? app : { ...app, window: { columns, rows } },
	columns,
	rows,
});

/** Holds the app outside React, so that keys that come in one read meet each other's outcome, not a stale frame. */
export class Store {
	private shown: Shown;
	private readonly listeners = new Set<() => void>();

	constructor(app: App, columns: number, rows: number) {
		this.shown = sized({ app, columns, rows });
	}

	readonly read = (): Shown => this.shown;

	readonly subscribe = (listener: () => void): (() => void) => {
		this.listeners.add(listener);
		return () => this.listeners.delete(listener);
	};

	/** Sets what is given and lets the screen follow. */
	set(change: Partial<Shown>): void {
		this.shown = sized({ ...this.shown, ...change });
		for (const listener of this.listeners) listener();
	}
}
