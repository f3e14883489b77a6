import { openStream } from '../../files/stream.ts';
import type { Recording } from '../../log/block.ts';
import type { Channel } from '../../log/channel.ts';
import type { RecognitionChoices } from '../../log/column-mapping.ts';
import { openRecording } from '../../log/record.ts';

/** A log that was opened: what its columns are, its rows to be gone through once, and how far its file is read. */
export interface LogReading {
	readonly recording: Recording;
	/** Bytes of the file; null for a pipe. */
	readonly size: number | null;
	/** Bytes of them read so far. */
	readonly taken: () => number;
	/** SHA-256 of the bytes read; asked for once, at the end. */
	readonly sha256: () => string;
}

/** What it takes to open a log. */
export interface Asked {
	/** `-` is standard input. */
	readonly path: string;
	readonly channels: readonly Channel[];
	readonly choices: RecognitionChoices;
}

/**
 * Opens a log in this thread.
 *
 * @throws FileProblem, BadTable
 */
export async function openHere({ path, channels, choices }: Asked): Promise<LogReading> {
	const { bytes, size, taken, sha256, close } = await openStream(path);
	try {
		return { recording: await openRecording(bytes, channels, choices), size, taken, sha256 };
	} catch (error) {
		close();
		throw error;
	}
}
