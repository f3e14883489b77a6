import type { Assessment } from '../../audit/assess.ts';
import type { LimitRung } from '../../audit/audit.ts';
import { asFineAsBand } from '../../wording/as-fine-as-band.ts';
import { type Block, code, heading, type Inline, listed, paragraph, strong } from '../document.ts';
import { figures } from '../pictures/figures.ts';
import { inUnits } from '../pictures/in-units.ts';
import type { ReportContext } from './context.ts';
import { fittedMark, fittedTo } from './fitted.ts';
import { count, rangeText } from './names.ts';

/** What gives out first: the rungs lowest first, those that could not be placed, and what moves with boost. */
export function ladder(assessment: Assessment & Partial<Pick<ReportContext, 'pictures'>>): Block[] {
	const { limits } = assessment.audit;
	if (limits.length === 0) return [];
	const placed = limits.filter(({ value }) => value !== null);
	const rest = limits.filter(({ value }) => value === null);
	return [
		heading(2, 'What gives out first'),
		...fittedTo(assessment.audit),
		...(limits.some(({ limit }) => limit.endsWith('boost_limit')) ? [paragraph(notHeld(placed, rest))] : []),
		...(placed.length > 0 ? [{ is: 'steps', items: placed.map(rung => placedLine(rung, assessment)) } as const] : []),
		...listed(
			[paragraph('Not placed yet:')],
			rest.map(({ title, missing }): Inline[] => [
				`${title}: `,
				...(missing.length > 0 ? ['needs ', code(missing.join(', '))] : ['could not be worked out']),
				'.',
			]),
		),
		...(assessment.pictures ? figures(assessment, ['limits', 'over-boost']) : []),
	];
}

/** The first line of the ladder is only the lowest of those that were worked out: which are not, and what no figure is had for. */
function notHeld(placed: readonly LimitRung[], rest: readonly LimitRung[]): string {
	const open = rest.length > 0 ? ` Not among them, as answers are missing: ${count(rest.length, 'limit')} below.` : '';
	const first = placed.length > 0 ? 'The first line is the lowest of those worked out.' : '';
	return `${first}${open} The crank is not worked out: no honest figure is had without its maker's data. Compressor surge and a small wastegate are no limits of this kind, as more boost moves away from both: they have lines of their own.`.trim();
}

function placedLine(rung: LimitRung, assessment: Assessment): Inline[] {
	const { wording } = assessment;
	const { value, low, high, bound, of_target, power } = rung;
	const show = asFineAsBand(wording, rung.limit, rung);
	const own = inUnits(wording, rung.limit);
	// Where a search ends is a round figure: 40 psi, 2.8 bar.
	const roundly = (number: number) => own.show(Number(own.of(number).toPrecision(2)));
	const [least, most] = [low, high].map(end => (end === null ? null : show(end * 100 < (high ?? 0) ? 0 : end)));
	const at =
		bound === 'above'
			? `not reached by ${roundly(value!)}`
			: bound === 'below'
				? rung.limit.endsWith('speed_limit')
					? 'over the limit at any engine speed'
					: 'over the limit already at zero boost'
				: `${show(value!)}`;
	const band = least && most && least !== most && bound === null ? `, ${rangeText(least, most)}` : '';
	const share =
		of_target !== null && of_target < 1 && bound === null ? `, ${Math.round(of_target * 100)} % of the target` : '';
	const made = power === null || bound !== null ? '' : `, about ${wording.show('engine.power', power)}`;
	return [strong(`${rung.title}: `), `${at}${band}${share}${made}${fittedMark(assessment, rung.limit)}. ${rung.raise}`];
}
