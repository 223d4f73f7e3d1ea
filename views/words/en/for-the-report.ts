/** What a report states besides the measurement, asked when a piece is put on the bench. */
export const forTheReport = {
  summary: "Who brought it, condition, operator: for the report and the search",
  fields: {
    customer: "Brought by",
    condition: "Condition on arrival",
    operator: "Operator",
    statedMass: "Mass, as the customer states it",
    marks: "Marks, as the customer reads them",
    stones: "Stones and fittings, as the customer states them",
  },
  customerHint:
    "a reference of your own, such as a page of the buying book. A name is personal data: local rules on buying books and on personal data say what must be kept, and what must not",
  conditionHint: "clean, knocks, repairs, coating",
  statedMassHint: "the dry reading is held against it before anything gets wet",
  theirs: "What the customer says stands in the report as theirs, apart from what was measured.",
};
