/** Bytes that one line after the other is written into: half a megabyte anew for each costs more than to encode it. */
export type LineBuffer = Uint8Array<ArrayBuffer>;

/** A buffer with a line in it. */
export interface Filled {
	readonly buffer: LineBuffer;
	/** Bytes of the line, its end included. */
	readonly length: number;
}

/** An audit takes about half of it. */
const usual = 2 ** 20;

export const makeBuffer = (bytes: number = usual): LineBuffer => new Uint8Array(bytes);

const encoder = new TextEncoder();

/** Writes a text and the end of its line into a buffer as UTF-8, or into a larger one where it does not fit. */
export function fill(buffer: LineBuffer, text: string): Filled {
	const { read, written } = encoder.encodeInto(text, buffer);
	if (read < text.length || written === buffer.length) return fill(makeBuffer(3 * text.length + 1), text);
	buffer[written] = 10;
	return { buffer, length: written + 1 };
}
