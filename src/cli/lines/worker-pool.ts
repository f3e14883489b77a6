import { setImmediate as turn } from 'node:timers/promises';
import type { Transferable, Worker } from 'node:worker_threads';

/** So many questions may wait at each worker: enough to keep it at work while the thread that asks answers one itself. */
const ahead = 4;

/** So many answers may wait for an earlier one, for each thread. */
const behind = 8;

/** A question on its way, and its answer once there is one. */
interface Asked<Answer> {
	answer: Answer | null;
}

interface Job<Question, Answer> {
	/** Answers here what every worker is too busy for. */
	readonly here: (question: Question) => Answer;
	/** Gets the answers, in the order of the questions. */
	readonly take: (answer: Answer) => void;
	/** Called when a worker ends by itself, with its status: an answer to wait for may never come. */
	readonly lost: (status: number) => void;
}

/** Workers and the thread that asks answer questions; each worker answers its own in order. */
export class WorkerPool<Question, Answer> {
	private readonly workers: readonly Worker[];
	private readonly job: Job<Question, Answer>;
	/** In the order of the questions: those whose answers were not taken yet. */
	private readonly asked: Asked<Answer>[] = [];
	/** By worker what it has to answer. */
	private readonly open: readonly Asked<Answer>[][];
	private answered = () => {};

	constructor(workers: readonly Worker[], job: Job<Question, Answer>) {
		this.workers = workers;
		this.job = job;
		this.open = workers.map(() => []);
		for (const [at, worker] of workers.entries()) {
			worker.on('message', (answer: Answer) => {
				this.open[at]!.shift()!.answer = answer;
				this.answered();
			});
			worker.on('exit', status => {
				if (this.open[at]!.length > 0) job.lost(status);
			});
		}
	}

	/** Has a question answered by a worker, or here; `moved` goes over to the worker with it. */
	async ask(question: Question, moved: readonly Transferable[] = []): Promise<void> {
		if (this.idlest() === null) await this.hear();
		const at = this.idlest();
		const asked: Asked<Answer> = { answer: null };
		this.asked.push(asked);
		if (at === null) asked.answer = this.job.here(question);
		else {
			this.open[at]!.push(asked);
			this.workers[at]!.postMessage(question, moved);
		}
		while (this.asked.length > behind * (this.workers.length + 1)) await this.first();
	}

	/** Takes every answer, and ends the workers. */
	async end(): Promise<void> {
		while (this.asked.length > 0) await this.first();
		await Promise.all(this.workers.map(worker => worker.terminate()));
	}

	/** The worker with the least to do; null where all have enough. */
	private idlest(): number | null {
		const waiting = this.open.map(({ length }) => length);
		const least = Math.min(...waiting);
		return least < ahead ? waiting.indexOf(least) : null;
	}

	/** Lets come in what workers have answered meanwhile. */
	private async hear(): Promise<void> {
		await turn();
		this.takeReady();
	}

	/** Waits for the oldest answer. */
	private async first(): Promise<void> {
		while (this.asked[0]?.answer === null) await new Promise<void>(resolve => (this.answered = resolve));
		this.takeReady();
	}

	private takeReady(): void {
		while (this.asked.length > 0 && this.asked[0]!.answer !== null) this.job.take(this.asked.shift()!.answer!);
	}
}
