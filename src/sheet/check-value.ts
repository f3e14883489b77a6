import { curveFault, orderFault, pairsFault, perCylinderFault, severalFault } from './check-list.ts';
import { numberFault, rangeFault } from './check-number.ts';
import { circuitsFault, codesFault, loadsFault } from './check-rows.ts';
import { type Context, type Fault, faultOf } from './fault.ts';
import type { Question } from './question.ts';

/** Checks one value against its question. */
export function faultIn(value: unknown, context: Context): Fault {
	const { question } = context;
	switch (question.kind) {
		case 'choice':
			return choiceFault(value, question);
		case 'several':
			return question.wasChoice && typeof value === 'string'
				? choiceFault(value, question)
				: severalFault(value, question);
		case 'whole':
			return Number.isInteger(value)
				? rangeFault(value as number, context)
				: faultOf(value, 'a whole number without a unit');
		case 'per-cylinder':
			return perCylinderFault(value, context);
		case 'firing-order':
			return orderFault(value, context);
		case 'pairs':
			return pairsFault(value, context);
		case 'curve':
			return curveFault(value, context);
		case 'loads':
			return loadsFault(value, context);
		case 'codes':
			return codesFault(value);
		case 'circuits':
			return circuitsFault(value);
		case 'teeth':
			return isToothPattern(value)
				? null
				: faultOf(value, 'a tooth pattern like "36-1": places, and of them the teeth that are missing');
		default:
			return numberFault(value, context);
	}
}

const choiceFault = (value: unknown, { choices }: Question): Fault =>
	typeof value === 'string' && Object.hasOwn(choices, value)
		? null
		: faultOf(value, `one of ${Object.keys(choices).join(', ')}`);

/** `36-1`: 36 places, one of them without its tooth. More missing than half the places is no wheel. */
function isToothPattern(value: unknown): boolean {
	const [, places, missing] = (typeof value === 'string' && /^(\d{1,3})-(\d{1,2})$/.exec(value)) || [];
	return places !== undefined && 2 * Number(missing) < Number(places);
}
