import { changedSince } from '../../sheet/rests-on.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import type { Model } from '../model.ts';
import type { LogOfCar } from './step-input.ts';

/** The logs that a sheet keeps, with the answers that have changed since: any of them that the log was judged by. */
export const logsOf = ({ rulebook }: Model, sheet: Sheet): (LogOfCar & { readonly sha256: string })[] =>
	(sheet.logs ?? []).map(({ name, sha256, quantities, rests_on }) => ({
		name,
		sha256,
		quantities,
		changed: changedSince(rests_on, sheet, rulebook.questions),
	}));
