import type { Chunk } from '../chunk.ts';
import { lacking, type Measured, plainly } from '../measured.ts';
import * as boost from '../pull/boost.ts';
import * as driveline from '../pull/driveline.ts';
import * as rates from '../pull/rates.ts';
import * as spark from '../pull/spark.ts';
import { ofCar, type PullView } from '../pull.ts';
import { inRun } from '../quantity.ts';

/** Under the target by no more than this counts as at it: 1 psi. */
const nearTarget = 6895;
/** deg; less of it is how a controller lets go of an old retard, or noise. */
const [little, some, hard] = [0.5, 1, 2];
/** deg under the advance that is meant: more of it, and a clean pull proves nothing for the advance that is meant. */
const takenOut = 1;

const numberOf = ({ value }: Measured): number => (typeof value === 'number' ? value : Number.NaN);

/** Whether a pull was a full one: at the boost that is meant, where something blows. */
function reachesTarget(pull: PullView): boolean {
	if (!pull.full) return false;
	return (
		pull.boosted === false || numberOf(boost.peak.measure(pull)) >= (ofCar(pull, 'boost.target') ?? NaN) - nearTarget
	);
}

/** Whether a pull ran the advance that is meant, as far as both are known. */
const atMeantAdvance = (pull: PullView): boolean =>
	numberOf(spark.advance.measure(pull)) >= (ofCar(pull, 'ignition.full_load_advance') ?? NaN) - takenOut;

const fittedKnock = ({ car }: Chunk): boolean => car.value('sensors.knock') === 'fitted-wired';

export const knock = inRun({
	id: 'log.knock_seen',
	kind: 'words',
	reassuring: 'clean',
	formula:
		'"some": 2 deg taken out for knock twice in a pull, or 1 deg in two pulls; "clean": under 0.5 deg in every pull, one of them within 1 psi of the target (any, without boost) at the advance that is meant, by a sensor that moved or is fitted and wired; else not known',
	gather() {
		let [knocked, light, clean, dirty, alive] = [false, 0, false, false, false];
		return {
			take(chunk) {
				alive ||= fittedKnock(chunk);
				for (const pull of chunk.pulls) {
					const { value } = pull.in('knock_retard');
					if (rates.knock.measure(pull).value !== true) continue;
					const most = numberOf(spark.most.measure(pull));
					alive ||= value.some(one => one !== 0);
					knocked ||= numberOf(spark.second.measure(pull)) >= hard;
					if (most >= some) light++;
					if (most >= little) dirty = true;
					else if (reachesTarget(pull) && atMeantAdvance(pull)) clean = true;
				}
			},
			result() {
				if (knocked || light >= 2) return plainly('some');
				return clean && !dirty && alive ? plainly('clean') : lacking('knock_retard', 'spark_advance');
			},
		};
	},
});

export const blowout = inRun({
	id: 'log.blowout_seen',
	kind: 'words',
	reassuring: 'never',
	formula:
		'"never": not a stumble in any pull, one of them within 1 psi of the target; else not known, for a log does not show that a smaller gap cured it',
	gather() {
		let [clean, other] = [false, false];
		return {
			take({ pulls }) {
				for (const pull of pulls) {
					if (driveline.stumbles.measure(pull).value !== 0) other = true;
					else if (reachesTarget(pull)) clean = true;
				}
			},
			result: () => (clean && !other ? plainly('never') : lacking('engine_speed', 'pull')),
		};
	},
});
