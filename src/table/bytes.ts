import { BadTable } from './problem.ts';

/** A text in pieces of any length, as a file or a pipe gives it. Each is good until the next is asked for. */
export type Bytes = AsyncIterable<Uint8Array>;

/** As TextDecoder names them. */
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

const marks: readonly (readonly [encoding: Encoding, ...mark: number[]])[] = [
	['utf-8', 0xef, 0xbb, 0xbf],
	['utf-16le', 0xff, 0xfe],
	['utf-16be', 0xfe, 0xff],
];

/**
 * The encoding of a text that begins so, and how many bytes its byte order mark has.
 *
 * @throws BadTable when it is no text
 */
export function encodingOf(start: Uint8Array): { readonly encoding: Encoding; readonly mark: number } {
	for (const [encoding, ...mark] of marks) {
		if (mark.every((byte, at) => start[at] === byte)) return { encoding, mark: mark.length };
	}
	const sample = start.subarray(0, 4096);
	const zeros = [0, 0];
	let steering = 0;
	for (const [at, byte] of sample.entries()) {
		if (byte === 0) zeros[at % 2]!++;
		else if (byte < 9 || (byte > 13 && byte < 32)) steering++;
	}
	const half = sample.length / 2;
	// Digits and commas in UTF-16 have a zero in every second byte.
	if (zeros[1]! > half * 0.7 && zeros[0]! < half * 0.1) return { encoding: 'utf-16le', mark: 0 };
	if (zeros[0]! > half * 0.7 && zeros[1]! < half * 0.1) return { encoding: 'utf-16be', mark: 0 };
	if (steering + zeros[0]! + zeros[1]! > sample.length * 0.1) {
		throw new BadTable('bytes that are no text', 'a table as text, values apart by commas, semicolons, tabs or |');
	}
	return { encoding: isUtf8(start) ? 'utf-8' : 'windows-1252', mark: 0 };
}

function isUtf8(start: Uint8Array): boolean {
	try {
		// Streaming: a sign may be cut at the end.
		new TextDecoder('utf-8', { fatal: true }).decode(start, { stream: true });
		return true;
	} catch {
		return false;
	}
}

/** Makes of each piece one whose line ends are single \n and whose signs of the table are single bytes. */
export function plainBytes(encoding: Encoding, loneReturns: boolean): (piece: Uint8Array) => Uint8Array {
	const wide = encoding.startsWith('utf-16');
	const decoder = new TextDecoder(encoding);
	const encoder = new TextEncoder();
	return piece => {
		const narrow = wide ? encoder.encode(decoder.decode(piece, { stream: true })) : piece;
		return loneReturns ? narrow.map(byte => (byte === 13 ? 10 : byte)) : narrow;
	};
}

export type Decoder = InstanceType<typeof TextDecoder>;

/** What reads cells and headers of the bytes that `plainBytes` gives. */
export const cellDecoder = (encoding: Encoding): Decoder =>
	new TextDecoder(encoding === 'windows-1252' ? 'windows-1252' : 'utf-8');
