/** What a trapped charge would give with some spark, whatever spark the engine runs. */
export interface SparkTrial {
  /** rad before firing top dead center */
  readonly advance: number;
  /** N m, of the whole engine; at the run's own spark the run's torque. */
  readonly torque: number;
  /** Octane number at which knock would just be due. */
  readonly octane: number;
}
