import { psi } from '../../physics/constants.ts';
import { numberOf } from '../car.ts';
import { type Chunk, newIn } from '../chunk.ts';
import { exactly, lacking, type Measured, measured } from '../measured.ts';
import * as boost from '../pull/boost.ts';
import * as driveline from '../pull/driveline.ts';
import * as rates from '../pull/sampling-rates.ts';
import * as spark from '../pull/spark.ts';
import type { PullView } from '../pull.ts';
import { runQuantity } from '../quantity.ts';

/** Pa, 1 psi: a pull that comes so near to the target has reached it. */
const nearTarget = psi;
/**
 * deg taken out for knock. Less than the first is noise, or what is left of an older retard; a pull with the second knocked
 * lightly; the third, read twice in a pull, is knock.
 */
const [noise, light, knocking] = [0.5, 1, 2];
/** deg by which a pull's advance may lie under the target advance; under it a clean pull proves nothing for the target. */
const nearAdvance = 1;

/** The figure that was measured; NaN where there is none. */
const figureOf = ({ value }: Measured): number => (typeof value === 'number' ? value : Number.NaN);

/** Whether a pull reached the target boost; unboosted, any that has a part at full. */
function reachesTarget(pull: PullView): boolean {
	if (!pull.full) return false;
	return (
		pull.boosted === false ||
		figureOf(boost.peak.measure(pull)) >= (numberOf(pull.car, 'boost.target') ?? NaN) - nearTarget
	);
}

/** Whether a pull ran the target advance; false where one of them is not known. */
const atTargetAdvance = (pull: PullView): boolean =>
	figureOf(spark.advance.measure(pull)) >= (numberOf(pull.car, 'ignition.full_load_advance') ?? NaN) - nearAdvance;

/** Whether the sheet has a knock sensor that the controller listens to. */
const hasKnockSensor = ({ car }: Chunk): boolean => car.value('sensors.knock') === 'fitted-wired';

export const knock = runQuantity({
	id: 'log.knock_seen',
	kind: 'words',
	reassuring: 'clean',
	formula:
		'"some": 2 deg taken out for knock twice in a pull, or 1 deg in two pulls; "clean": under 0.5 deg in every pull, one of them within 1 psi of the target (any, without boost) at the target advance, by a sensor that moved or is fitted and wired; else not known',
	accumulator() {
		let [knocked, lightPulls, clean, retarded, alive] = [false, 0, false, false, false];
		return {
			take(chunk) {
				alive ||= hasKnockSensor(chunk);
				for (const pull of chunk.pulls) {
					const { value } = pull.in('knock_retard');
					if (rates.knock.measure(pull).value !== true) continue;
					const most = figureOf(spark.most.measure(pull));
					alive ||= value.some(one => one !== 0);
					knocked ||= figureOf(spark.second.measure(pull)) >= knocking;
					if (most >= light) lightPulls++;
					if (most >= noise) retarded = true;
					else if (reachesTarget(pull) && atTargetAdvance(pull)) clean = true;
				}
			},
			result() {
				if (knocked || lightPulls >= 2) return exactly('some');
				return clean && !retarded && alive ? exactly('clean') : lacking('knock_retard', 'spark_advance');
			},
		};
	},
});

export const blowout = runQuantity({
	id: 'log.blowout_seen',
	kind: 'words',
	reassuring: 'never',
	formula:
		'"never": not a stumble in any pull, one of them within 1 psi of the target; else not known, for a log does not show that a smaller gap cured it',
	accumulator() {
		let [clean, other] = [false, false];
		return {
			take({ pulls }) {
				for (const pull of pulls) {
					if (driveline.stumbles.measure(pull).value !== 0) other = true;
					else if (reachesTarget(pull)) clean = true;
				}
			},
			result: () => (clean && !other ? exactly('never') : lacking('engine_speed', 'pull')),
		};
	},
});

export const knockMoved = runQuantity({
	id: 'log.knock_proved',
	kind: 'yes-no',
	formula:
		'yes where knock retard was ever anything but 0, or the sheet has the knock sensor fitted and wired; else not known',
	accumulator() {
		let [moved, logged, fitted] = [false, false, false];
		return {
			take(chunk) {
				const { value } = newIn(chunk, 'knock_retard');
				logged ||= value.length > 0;
				moved ||= value.some(one => one !== 0);
				fitted ||= hasKnockSensor(chunk);
			},
			result: () => exactly(logged && (moved || fitted) ? true : undefined, logged ? 'sensors.knock' : 'knock_retard'),
		};
	},
});

export const knockPulls = runQuantity({
	id: 'log.knock_pulls',
	kind: 'count',
	formula: 'in how many pulls 1 deg or more was taken out for knock',
	accumulator() {
		let [count, logged] = [0, false];
		return {
			take({ pulls: views }) {
				for (const view of views) {
					const { value } = view.in('knock_retard');
					logged ||= value.length > 0;
					if (value.some(one => one >= light - 1e-9)) count++;
				}
			},
			result: () => (logged ? measured(count) : exactly(undefined, 'knock_retard')),
		};
	},
});
