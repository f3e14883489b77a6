import { EventEmitter } from 'node:events';

/** The part of a terminal that is written to. */
export interface Output {
	readonly columns?: number;
	readonly rows?: number;
	write(text: string): unknown;
}

const atOnce = { begin: '\u001b[?2026h', end: '\u001b[?2026l' };

/**
 * What the drawing library draws on. It hands over whole frames; only the rows that differ from what stands are written,
 * each at its place, so that nothing flickers and the last row can be used.
 */
export class Painter extends EventEmitter {
	readonly isTTY = true;
	private readonly output: Output;
	private drawn: string[] = [];
	private frame = '';
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

	/** Takes a frame, a line a row. */
	write(frame: string): boolean {
		this.frame = frame;
		if (this.paused) return true;
		const rows = frame.split('\n').slice(0, this.rows);
		const changed = rows.map((row, at) => (row === this.drawn[at] ? '' : `\u001b[${at + 1};1H${row}\u001b[0m\u001b[K`));
		const below = rows.length < this.drawn.length ? `\u001b[${rows.length + 1};1H\u001b[J` : '';
		this.drawn = rows;
		const text = changed.join('') + below;
		if (text !== '') this.output.write(atOnce.begin + text + atOnce.end);
		return true;
	}

	/** Forgets what stands and draws the last frame anew, on a clear screen. */
	repaint(): void {
		this.paused = false;
		this.drawn = [];
		this.output.write('\u001b[2J');
		this.write(this.frame);
	}

	/** Writes nothing until `repaint`. */
	pause(): void {
		this.paused = true;
	}
}
