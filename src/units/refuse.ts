import { standardAtmosphere } from './defined.ts';
import type { Kind } from './kinds.ts';
import { unitNamed } from './names.ts';
import { quoted } from './spelling.ts';
import { toCanonical, type Unit } from './unit.ts';
import { acceptedInWords, kindInWords } from './words.ts';
import { write, writeInFull } from './write.ts';

/** Why a number in this spelling of a unit is not taken where only `kinds` are, and what is. */
export function wrongUnit(typed: number, spelling: string, kinds: readonly Kind[] | undefined): string {
	const accepted = `This takes ${acceptedInWords(kinds)}.`;
	if (spelling === '') return `${typed} has no unit. ${accepted}`;
	const unit = unitNamed(spelling);
	if (!unit || !kinds) return `${quoted(spelling)} is no unit known here. ${accepted}`;
	const rate = ['/h', '/min'].map(per => unitNamed(spelling + per, kinds)).find(each => each !== undefined);
	const hint = rate ? ` Is it ${rate.symbol}?` : '';
	return otherZero(typed, unit, kinds) ?? `${quoted(spelling)} is for ${kindInWords(unit.kind)}.${hint} ${accepted}`;
}

/** Gauge and absolute pressures are never mixed: the other one is offered, at the standard atmosphere, to be typed by hand. */
function otherZero(typed: number, unit: Unit, kinds: readonly Kind[]): string | undefined {
	const given = writeInFull(typed, unit);
	const base = unit.symbol === 'psia' ? 'psi' : unit.symbol.replace(' abs', '');
	if (unit.kind === 'absolute-pressure' && kinds.includes('pressure')) {
		const gauge = write(toCanonical(typed, unit) - standardAtmosphere, unitNamed(base, ['pressure'])!);
		return `${given} counts from vacuum; this takes a gauge pressure. Less the standard atmosphere (101.325 kPa) it is ${gauge}: enter that, or read it on a gauge.`;
	}
	if (unit.kind === 'pressure' && kinds.includes('absolute-pressure')) {
		const wanted = unitNamed(base === 'psi' ? 'psia' : `${base} abs`, ['absolute-pressure']);
		const absolute = write(
			toCanonical(typed, unit) + standardAtmosphere,
			wanted ?? unitNamed('kPa abs', ['absolute-pressure'])!,
		);
		return `${given} counts from the air outside (gauge); this takes a pressure from vacuum. With the standard atmosphere (101.325 kPa) it is ${absolute}: enter that if the label means gauge, else the label's figure as psia or kPa abs.`;
	}
	return undefined;
}
