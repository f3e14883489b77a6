import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setFlagsFromString } from 'node:v8';
import { parentPort, Worker, workerData } from 'node:worker_threads';
import { inputIsFolder } from '../../files/descriptors.ts';
import { FileProblem } from '../../files/problem.ts';
import { loadModel } from '../assets/model.ts';
import { type JudgedLine, judgeLine, type Line } from '../lines/judge-line.ts';
import { type LineBuffer, makeBuffer } from '../lines/line-buffer.ts';
import { WorkerPool } from '../lines/worker-pool.ts';
import { exit } from '../process/exit.ts';
import { printBytes } from '../process/output.ts';
import type { JudgeFlags } from '../sheet/judge-sheet.ts';

/** With fewer lines no worker pays for its start. */
const fewLines = 24;

/**
 * `swap-audit audit --lines`: one sheet a line on stdin, one audit without draws a line on stdout, in the same order. A bad
 * line is reported and passed over. Many lines are judged by as many threads as the machine runs at once, this one among them.
 */
export async function auditJsonl(flags: JudgeFlags): Promise<number> {
	const handed: Handed | null = workerData;
	if (handed?.is === worker) return await serve(handed.flags);
	if (inputIsFolder()) throw new FileProblem('standard input', 'this is a folder', 'Pipe sheets in, one a line.');
	const model = await loadModel(flags.rules);
	const buffers: LineBuffer[] = [];
	let line = 0;
	let bad = 0;
	let pool: WorkerPool<Line, JudgedLine> | null = null;
	const here = (asked: Line) => judgeLine(model, asked, flags);
	const take = ({ buffer, length, bad: isBad }: JudgedLine) => {
		if (isBad) bad++;
		printBytes(buffer.subarray(0, length));
		buffers.push(buffer);
	};
	const lost = (status: number) => process.exit(status);
	for await (const text of createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY })) {
		const asked: Line = { text, line: ++line, buffer: buffers.pop() ?? makeBuffer() };
		if (line > fewLines && availableParallelism() > 1)
			pool ??= new WorkerPool(startWorkers(flags), { here, take, lost });
		if (pool) await pool.ask(asked, [asked.buffer.buffer]);
		else take(here(asked));
	}
	await pool?.end();
	return bad > 0 ? exit.badInput : exit.done;
}

const worker = 'a worker for lines of sheets';

interface Handed {
	readonly is: typeof worker;
	readonly flags: JudgeFlags;
}

/**
 * The command itself, once a thread. Each thread has its own core: helpers in collecting garbage would only take turns with it.
 * A heap that is collected once it has grown by two fifths of what lives in it stays as large as it is, however many lines come.
 */
function startWorkers(flags: JudgeFlags): Worker[] {
	setFlagsFromString('--no-parallel-scavenge');
	setFlagsFromString('--heap-growing-percent=40');
	const handed: Handed = { is: worker, flags };
	const command = join(import.meta.dirname, 'swap-audit.js');
	const start = () => new Worker(command, { argv: ['audit', '--lines'], workerData: handed });
	return Array.from({ length: availableParallelism() - 1 }, start);
}

/** In a worker: answers line after line until it is ended. What breaks ends it as it ends the command, with its message. */
async function serve(flags: JudgeFlags): Promise<never> {
	const model = await loadModel(flags.rules);
	return await new Promise(() => {
		parentPort!.on('message', (line: Line) => {
			const judged = judgeLine(model, line, flags);
			parentPort!.postMessage(judged, [judged.buffer.buffer]);
		});
	});
}
