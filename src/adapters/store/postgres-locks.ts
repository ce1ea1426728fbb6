/** "WAYW": the first half of our advisory locks, which all programs of a database share. */
export const lockClass = 0x57415957;

/** Second halves: what is held until a transaction ends. */
export const locks = { schema: 0, jobs: 1, kit: 2, devices: 3 } as const;
