/**
 * What is meant where no detector says otherwise: a charcoal canister 4 in across and 1 in tall, its underside 30 in above the floor, mm
 * (the plan format gives these for `area` and `spots`).
 */
export const USUAL_DETECTOR = { radius: 50.8, tall: 25.4, base: 762 } as const;
