import type { State } from '../../graph/solve.ts';
import type { LogResults } from '../../log/results.ts';
import type { Plugs } from '../../plugs/parts.ts';
import type { UnitSet } from '../../sheet/question.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import type { Fitted } from '../fitted.ts';
import type { Model } from '../model.ts';

/** A log of this car, and which of the answers that it rests on have another value by now. */
export interface LogOfCar {
	readonly name: string;
	readonly quantities: LogResults;
	readonly changed: readonly string[];
}

/** What a step in boost is computed from. */
export interface StepInput {
	readonly model: Model;
	/** With the answers that the logs settle. */
	readonly sheet: Sheet;
	/** That sheet solved without any log or fit, where it is at hand. */
	readonly plain?: State;
	/** Solved with the newest log, at the fitted center where a fit applies. */
	readonly state: State;
	readonly fitted: Fitted | null;
	/** The newest last. */
	readonly logs: readonly LogOfCar[];
	/** Called only where there is a step to judge the whole sheet at. */
	readonly plugs: () => Plugs | null;
	readonly units: UnitSet;
	readonly draws?: number;
}
