// How a limit is written down: the form in which each area of the checks states its ready-made rules and standing limits.

/** A limit with where it comes from. */
export interface Limit {
  value: number;
  source: string;
  chosenBy: string;
  /** What crossing it means, where a rule says more than that it must not be. */
  means?: string;
}

/** A rule that a plan may choose by its id. */
export interface ReadyRule {
  /** Limit that it sets and its value in that limit's unit. */
  limit: string;
  value: number;
  source: string;
  /** What crossing it means, in words. */
  means?: string;
  /** Further limits that the same rule sets. */
  also?: readonly { limit: string; value: number }[];
}

/** A limit that stands when nobody chose another one. */
export type StandingLimit = Pick<Limit, "value" | "source">;

/** What one area of the checks brings: rules by id, standing limits by name. */
export interface AreaLimits {
  ready: Record<string, ReadyRule>;
  standing: Record<string, StandingLimit>;
  /** Names of limits that only a plan sets: none stands when it does not. */
  open?: readonly string[];
}
