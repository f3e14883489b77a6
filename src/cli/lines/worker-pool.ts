import type { Worker } from 'node:worker_threads';

/** So many questions may wait at each worker: enough to keep it at work, and a bound on what is held. */
const ahead = 4;

/** Workers that answer questions one after the other; `take` gets the answers in the order of the questions. */
export class WorkerPool<Question, Answer> {
	private readonly workers: readonly Worker[];
	private readonly take: (answer: Answer) => void;
	private readonly waiting: Promise<Answer>[] = [];
	/** By worker whoever waits for its next answers: each answers in order. */
	private readonly open: ((answer: Answer) => void)[][];
	private asked = 0;

	/** `lost` is called when a worker ends by itself, with its status: an answer to wait for may never come. */
	constructor(workers: readonly Worker[], take: (answer: Answer) => void, lost: (status: number) => void) {
		this.workers = workers;
		this.take = take;
		this.open = workers.map(() => []);
		for (const [at, worker] of workers.entries()) {
			worker.on('message', (answer: Answer) => this.open[at]!.shift()!(answer));
			worker.on('exit', status => {
				if (this.open[at]!.length > 0) lost(status);
			});
		}
	}

	/** Asks; waits for the oldest answer where enough are open. */
	async ask(question: Question): Promise<void> {
		const at = this.asked++ % this.workers.length;
		this.waiting.push(new Promise(resolve => this.open[at]!.push(resolve)));
		this.workers[at]!.postMessage(question);
		if (this.waiting.length >= ahead * this.workers.length) this.take(await this.waiting.shift()!);
	}

	/** Waits for every answer, and ends the workers. */
	async end(): Promise<void> {
		for (const answer of this.waiting.splice(0)) this.take(await answer);
		await Promise.all(this.workers.map(worker => worker.terminate()));
	}
}
