import type { App } from './app.ts';

interface Shown {
	readonly app: App;
	readonly columns: number;
	readonly rows: number;
}

/** Holds the app outside React, so that keys that come in one read meet each other's outcome, not a stale frame. */
export class Store {
	private shown: Shown;
	private readonly listeners = new Set<() => void>();

	constructor(app: App, columns: number, rows: number) {
		this.shown = { app, columns, rows };
	}

	readonly read = (): Shown => this.shown;

	readonly subscribe = (listener: () => void): (() => void) => {
		this.listeners.add(listener);
		return () => this.listeners.delete(listener);
	};

	/** Sets what is given and lets the screen follow. */
	set(change: Partial<Shown>): void {
		this.shown = { ...this.shown, ...change };
		for (const listener of this.listeners) listener();
	}
}
