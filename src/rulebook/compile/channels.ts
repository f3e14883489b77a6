import { type Channel, movements, specials } from '../../log/channel.ts';
import { headerKey } from '../../log/header.ts';
import { scaleOf } from '../../log/scale.ts';
import { canonicalUnits, type Kind } from '../../units/kinds.ts';
import { readConstant } from './constant.ts';
import { type Fields, quote } from './fields.ts';

/** What a column of a log can be (rules/channels.yaml). A header belongs to one channel only. */
export function readChannels(root: Fields): Channel[] {
	const outer = root.inner('channels');
	const owners = new Map<string, string>();
	return (outer?.keys() ?? []).flatMap(id => {
		const inner = outer!.inner(id);
		if (!inner) return [];
		const channel = readChannel(id, inner);
		for (const { text, offset } of inner.placedList('known')) {
			const key = headerKey(text);
			const owner = owners.get(key);
			if (owner) inner.source.report(offset, `${quote(text)} is a header of ${owner} already`);
			owners.set(key, id);
		}
		inner.refuseRest();
		return [channel];
	});
}

function readChannel(id: string, inner: Fields): Channel {
	const kind = inner.oneOf('kind', Object.keys(canonicalUnits) as Kind[], 'ratio');
	const span = (key: string, need: boolean): [number, number] | null => {
		if (!need && !inner.has(key)) return null;
		const ends = inner.placedList(key).map(placed => readConstant(inner.source, placed, [kind])?.value ?? 0);
		if (ends.length === 2 && ends[0]! < ends[1]!) return [ends[0]!, ends[1]!];
		inner.report(key, `${key}: the least and the most are needed here, in this order`);
		return null;
	};
	const channel: Channel = {
		id,
		title: inner.text('title'),
		kind,
		special: inner.has('special') ? inner.oneOf('special', specials, 'lambda') : null,
		units: inner.placedList('units', false).map(({ text }) => text),
		known: inner.texts('known'),
		range: span('range', true) ?? [0, 0],
		high: span('high', false),
		middle: span('middle', false),
		moves: inner.texts('moves', false).flatMap(word => {
			const known = movements.find(movement => movement === word);
			if (!known) inner.report('moves', `moves: ${quote(word)} is not one of ${movements.join(', ')}`);
			return known ? [known] : [];
		}),
	};
	for (const unit of channel.units) {
		if (!scaleOf(unit, channel)) inner.report('units', `units: ${quote(unit)} is no unit of ${kind}`);
	}
	return channel;
}
