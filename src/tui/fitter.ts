import { fitInSteps } from '../audit/fitted.ts';
import { stateOf } from '../audit/logged.ts';
import type { Model } from '../audit/model.ts';
import type { Steps } from '../fit/steps.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { App } from './app.ts';
import { fitted } from './judging.ts';

/** Fits the model to a sheet's logs beside the drawing, for as long as somebody waits for it. */
export class Fitter {
	private readonly later: (change: (app: App) => App) => void;
	/** Counts what was begun: only the last one goes on. */
	private turn = 0;

	constructor(later: (change: (app: App) => App) => void) {
		this.later = later;
	}

	fit(model: Model, sheet: Sheet): void {
		this.follow(fitInSteps(model, sheet, stateOf(model, sheet)));
	}

	/** Takes one step after the other; keys are taken in between. */
	follow(steps: Steps<unknown>): void {
		const turn = ++this.turn;
		let shown = 0;
		/** Shows a change of the waiting screen; whether that is still there. */
		const show = (change: (app: App) => App): boolean => {
			let waited = false;
			this.later(app => {
				waited = app.screen === 'fitting';
				return waited ? change(app) : app;
			});
			return waited;
		};
		const step = (): void => {
			if (turn !== this.turn) return;
			const { done, value } = steps.next();
			if (done) {
				show(fitted);
				return;
			}
			const share = Math.floor(100 * value) / 100;
			const goesOn = share === shown || show(app => ({ ...app, fitting: { ...app.fitting!, share } }));
			shown = share;
			if (goesOn) setImmediate(step);
		};
		setImmediate(step);
	}
}
