/** What a report states besides the measurement, asked when a piece is put on the bench. */
export const forTheReport = {
  summary: "For the report: customer, condition, operator",
  fields: {
    customer: "Customer",
    condition: "Condition on arrival",
    operator: "Operator",
    statedMass: "Mass, as the customer states it",
    marks: "Marks, as the customer reads them",
    stones: "Stones and fittings, as the customer states them",
  },
  customerHint: "a ticket will do; a name only if a report needs it",
  conditionHint: "clean, knocks, repairs, coating",
  theirs: "What the customer says stands in the report as theirs, apart from what was measured.",
};
