import { Box, Text } from 'ink';
import { useEffect, useSyncExternalStore } from 'react';
import { compose } from './frame.ts';
import type { Row } from './painter.ts';
import type { Store } from './store.ts';
import type { Line } from './text.ts';
import { type Appearance, styleOf } from './theme.ts';
import { frameOf } from './view.ts';

/** Which rows of a window are to be drawn. */
interface Canvas {
	changed(lines: readonly Line[], appearance: Appearance): readonly Row[];
}

/** All of them, where nothing stands yet. */
const blank: Canvas = { changed: lines => lines.map((line, at) => ({ at, line })) };

/** Draws the store's app, a line a row, as far as it differs from what stands. `ready` is called once the first frame stands. */
export function Screen({
	store,
	ready,
	canvas = blank,
}: {
	readonly store: Store;
	readonly ready: () => void;
	readonly canvas?: Canvas;
}) {
	const { app, columns, rows } = useSyncExternalStore(store.subscribe, store.read);
	useEffect(() => {
		ready();
	}, [ready]);
	const { appearance } = app;
	const changed = canvas.changed(compose(frameOf(app, columns - 1), columns, rows, appearance), appearance);
	return (
		<Box flexDirection="column" width={columns}>
			{changed.map(({ at, line }) => (
				<Drawn key={at} line={line} appearance={appearance} />
			))}
		</Box>
	);
}

function Drawn({ line, appearance }: { readonly line: Line; readonly appearance: Appearance }) {
	const { text, look, parts } = line;
	return (
		<Text wrap="truncate" {...(parts ? {} : styleOf(look, appearance))}>
			{parts
				? parts.map((part, index) => (
						// biome-ignore lint/suspicious/noArrayIndexKey: parts have no identity but their place
						<Text key={index} {...styleOf(part.look, appearance)}>
							{part.text}
						</Text>
					))
				: text === ''
					? ' '
					: text}
		</Text>
	);
}
