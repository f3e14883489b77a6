import { EventEmitter } from 'node:events';
import type { Line } from './text.ts';
import type { Appearance } from './theme.ts';

/** The part of a terminal that is written to. */
export interface Output {
	readonly columns?: number;
	readonly rows?: number;
	write(text: string): unknown;
}

/** A row of the window and what is to stand in it. */
export interface Row {
	readonly at: number;
	readonly line: Line;
}

const atOnce = { begin: '\u001b[?2026h', end: '\u001b[?2026l' };

/**
 * What the drawing library draws on. It is given the rows that differ from what stands, for laying out a whole window at each key
 * takes longer than a key may; only they are written, each at its place, so that nothing flickers and the last row can be used.
 */
export class Painter extends EventEmitter {
	readonly isTTY = true;
	private readonly output: Output;
	/** What stands in each row: the line, and the text that the library made of it. */
	private standing: { readonly line: Line; readonly text: string }[] = [];
	private appearance: Appearance | null = null;
	private pending: readonly Row[] = [];
	private paused = false;

	constructor(output: Output) {
		super();
		this.output = output;
	}

	get columns(): number {
		return this.output.columns ?? 80;
	}

	get rows(): number {
		return this.output.rows ?? 24;
	}

	/** The rows of a window that differ from what stands: those that the library's next frame consists of. */
	changed(lines: readonly Line[], appearance: Appearance): readonly Row[] {
		if (appearance !== this.appearance) this.standing = [];
		this.appearance = appearance;
		this.standing.length = Math.min(this.standing.length, lines.length);
		const rows = lines.map((line, at) => ({ at, line }));
		this.pending = rows.filter(({ at, line }) => !isSame(this.standing[at]?.line, line));
		return this.pending;
	}

	/** Takes the rows that had changed, a line each. */
	write(frame: string): boolean {
		if (this.pending.length === 0) return true;
		const texts = frame.split('\n');
		const rows = this.pending.map(({ at, line }, index) => ({ at, line, text: texts[index] ?? '' }));
		for (const { at, line, text } of rows) this.standing[at] = { line, text };
		this.pending = [];
		this.put(rows);
		return true;
	}

	/** Draws anew all that stands, on a clear screen. */
	repaint(): void {
		this.paused = false;
		this.output.write('\u001b[2J');
		this.put(this.standing.map(({ text }, at) => ({ at, text })));
	}

	/** Writes nothing until `repaint`. */
	pause(): void {
		this.paused = true;
	}

	private put(rows: readonly { readonly at: number; readonly text: string }[]): void {
		if (this.paused) return;
		const within = rows.filter(({ at }) => at < this.rows);
		const text = within.map(({ at, text }) => `\u001b[${at + 1};1H${text}\u001b[0m\u001b[K`).join('');
		if (text !== '') this.output.write(atOnce.begin + text + atOnce.end);
	}
}

function isSame(before: Line | undefined, now: Line): boolean {
	if (!before || before.text !== now.text || before.look !== now.look) return false;
	const [a, b] = [before.parts ?? [], now.parts ?? []];
	return a.length === b.length && a.every(({ text, look }, at) => text === b[at]!.text && look === b[at]!.look);
}
