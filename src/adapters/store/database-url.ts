/** Whether a place for a workshop or its photos is a PostgreSQL database, as DATABASE_URL has it. */
export const isDatabaseUrl = (place: string): boolean => /^postgres(ql)?:\/\//.test(place);
