// Two cranes lift 160 t, 56 m apart: the worked case of Guidelines for Marine Lifting and Lowering Operations, 0027/ND Rev
// 11.2 (2016), 6.2.2 to 6.2.4 and 13.2.1 (rules read, figures recomputed); t and m.

export const lift160 = {
  weight: 160,
  contingency: 1.1,
  toFirst: 27,
  toSecond: 29,
  rigging: [6, 6] as [number, number],
  dynamicFactor: 1.05,
};
