/** Bytes that one line after the other is written into: half a megabyte anew for each costs more than to encode it. */
export type Room = Uint8Array<ArrayBuffer>;

/** A room with a line in it. */
export interface Filled {
	readonly room: Room;
	/** Bytes of the line, its end included. */
	readonly length: number;
}

/** An audit takes about half of it. */
const usual = 2 ** 20;

export const makeRoom = (bytes: number = usual): Room => new Uint8Array(bytes);

const encoder = new TextEncoder();

/** Writes a text and the end of its line into a room as UTF-8, or into a larger one where it does not fit. */
export function fill(room: Room, text: string): Filled {
	const { read, written } = encoder.encodeInto(text, room);
	if (read < text.length || written === room.length) return fill(makeRoom(3 * text.length + 1), text);
	room[written] = 10;
	return { room, length: written + 1 };
}
