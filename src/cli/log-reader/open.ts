import { on } from 'node:events';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { sizeNow } from '../../files/stream.ts';
import type { Block } from '../../log/block.ts';
import { errorOf, type Message } from './messages.ts';
import { type Asked, type LogReading, openHere } from './reading.ts';

/** Opens a log, once. */
export type OpenLog = (asked: Asked) => Promise<LogReading>;

/** Bytes from which a log pays for the start of a thread that reads it. */
const large = 2 * 1024 ** 2;

/**
 * How a log is opened: a large file is read by a thread of its own, which starts now, while this one solves the sheet and judges
 * what was read.
 */
export function logOpener(path: string): OpenLog {
	if (path === '-' || sizeNow(path) < large || availableParallelism() < 2) return openHere;
	// What it keeps for long are bytes outside of its heap.
	const resourceLimits = { maxYoungGenerationSizeMb: 4 };
	const worker = new Worker(join(import.meta.dirname, 'log-reader.js'), { resourceLimits });
	return asked => openIn(worker, asked);
}

/** Opens a log in a thread. */
async function openIn(worker: Worker, asked: Asked): Promise<LogReading> {
	const messages = on(worker, 'message', { close: ['exit'] });
	const next = async (): Promise<Exclude<Message, { is: 'refused' }>> => {
		const { value, done } = await messages.next();
		if (done) throw new Error("a log's reader ended without a word");
		const [message] = value as [Message];
		if (message.is === 'refused') throw errorOf(message.problem);
		return message;
	};
	worker.postMessage(asked);
	let now = await next();
	if (now.is !== 'opened') throw new Error(`a log's reader begins with ${now.is}`);
	const { recording, size, totals } = now;
	async function* blocks(): AsyncGenerator<Block> {
		try {
			for (now = await next(); now.is === 'block'; now = await next()) {
				Object.assign(totals, now.totals);
				worker.postMessage(null);
				yield now.block;
			}
			Object.assign(totals, now.totals);
		} finally {
			void worker.terminate();
		}
	}
	return {
		recording: { ...recording, totals, blocks: blocks() },
		size,
		taken: () => now.taken,
		sha256: () => (now.is === 'end' ? now.sha256 : ''),
	};
}
