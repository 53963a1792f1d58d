export type ProblemCode = string;
