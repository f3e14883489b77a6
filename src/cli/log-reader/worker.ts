import { parentPort } from 'node:worker_threads';
import type { Block } from '../../log/block.ts';
import { ahead, type Message, problemOf } from './messages.ts';
import { type Asked, openHere } from './reading.ts';

// A thread of its own, in a script of its own: reads one log and hands its blocks over, while the thread that asked judges.
const port = parentPort!;

const send = (message: Message, moved: readonly ArrayBuffer[] = []): void => port.postMessage(message, moved);

/** Handed over, not copied: a block belongs to whoever takes it. */
const buffersOf = ({ time, channels }: Block): ArrayBuffer[] => [
	...new Set([time, ...channels.values()].map(({ buffer }) => buffer as ArrayBuffer)),
];

async function serve(asked: Asked): Promise<void> {
	const { recording, size, taken, sha256 } = await openHere(asked);
	const { channels, columns, unused, notes, totals, blocks } = recording;
	send({ is: 'opened', recording: { channels, columns, unused, notes, totals }, size, totals, taken: taken() });
	let waiting = 0;
	let resume = () => {};
	port.on('message', () => {
		waiting--;
		resume();
	});
	for await (const block of blocks) {
		send({ is: 'block', block, totals, taken: taken() }, buffersOf(block));
		if (++waiting >= ahead) await new Promise<void>(resolve => (resume = resolve));
	}
	send({ is: 'end', totals, taken: taken(), sha256: sha256() });
}

port.once('message', (asked: Asked) =>
	serve(asked)
		.catch(error => send({ is: 'refused', problem: problemOf(error) }))
		.finally(() => port.close()),
);
