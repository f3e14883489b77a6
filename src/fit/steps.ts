/** Work that is done in steps: each yields the share that is done, so that keys are heard and progress shown in between. */
export type Steps<T> = Generator<number, T, undefined>;

/** Does all steps at once. */
export function finish<T>(steps: Steps<T>): T {
	for (;;) {
		const { done, value } = steps.next();
		if (done) return value;
	}
}
