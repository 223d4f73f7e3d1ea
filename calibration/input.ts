import type { Arithmetic } from "./arithmetic.ts";

/** How an input may be spread about its value; u is the standard deviation except for Student (see there). */
export type Shape =
  /** Gaussian */
  | { kind: "normal" }
  /** anywhere within value ± u·√3, equally likely */
  | { kind: "rectangular" }
  /** mean of repeats: value + u·t with `dof` degrees of freedom (JCGM 101:2008, 6.4.9) */
  | { kind: "student" };

/** One named cause of uncertainty. Each cause is one input, wherever it enters. */
export interface Input {
  name: string;
  unit: string;
  value: number;
  /** standard uncertainty in `unit` */
  u: number;
  /** degrees of freedom of u; Infinity when u is taken as known */
  dof: number;
  shape: Shape["kind"];
  /** place in its list */
  index: number;
}

/** Two inputs from paired repeats: the correlation of their means (GUM H.2). */
export interface Correlation {
  a: Input;
  b: Input;
  r: number;
}

/** A model formula over the inputs: the same text for numbers, quantities and batches. */
export type Expression = <N>(a: Arithmetic<N>, of: (input: Input) => N) => N;

/** The inputs of one measurement in the order they were named. */
export class Inputs {
  readonly all: Input[] = [];
  readonly correlations: Correlation[] = [];

  /** Gaussian with standard uncertainty u. */
  normal(name: string, unit: string, value: number, u: number): Input {
    return this.#add({ name, unit, value, u, dof: Number.POSITIVE_INFINITY, shape: "normal" });
  }

  /** Equally likely anywhere within value ± halfWidth: u = halfWidth/√3 (GUM 4.3.7). */
  rectangular(name: string, unit: string, value: number, halfWidth: number): Input {
    return this.#add({
      name,
      unit,
      value,
      u: halfWidth / Math.sqrt(3),
      dof: Number.POSITIVE_INFINITY,
      shape: "rectangular",
    });
  }

  /** Anywhere from `from` to `to`, for causes that act one way only: the value is the middle. */
  between(name: string, unit: string, from: number, to: number): Input {
    return this.rectangular(name, unit, (from + to) / 2, Math.abs(to - from) / 2);
  }

  /** Mean of repeats with u = s/√n from `dof` degrees of freedom. */
  student(name: string, unit: string, value: number, u: number, dof: number): Input {
    return this.#add({ name, unit, value, u, dof, shape: Number.isFinite(dof) ? "student" : "normal" });
  }

  /** The input of that name, made at its first use: one cause that enters in several places. */
  once(name: string, make: () => Input): Input {
    return this.all.find((input) => input.name === name) ?? make();
  }

  /** The two inputs are means of paired repeats with this correlation coefficient. */
  correlate(a: Input, b: Input, r: number): void {
    if (r !== 0) this.correlations.push({ a, b, r });
  }

  #add(input: Omit<Input, "index">): Input {
    const added = { ...input, index: this.all.length };
    this.all.push(added);
    return added;
  }
}
