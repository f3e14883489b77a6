/** The points by which a thing must be settled, in order: before it goes in, cranks, fires, moves, makes boost; the rest. */
export const stages = ['install', 'crank', 'fire', 'move', 'boost', 'tidy'] as const;
export type Stage = (typeof stages)[number];

/** Whether one stage is another or comes after it. */
export const isFrom = (stage: Stage, first: Stage): boolean => stages.indexOf(stage) >= stages.indexOf(first);
