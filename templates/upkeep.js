// Marks the jobs whose day has passed by the clock of whoever reads. The book
// itself knows no clock.
"use strict";
(() => {
  const now = new Date();
  const today = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((n) => String(n).padStart(2, "0")).join("-");
  for (const table of document.querySelectorAll("table[data-overdue]")) {
    for (const due of table.querySelectorAll("[data-due]")) {
      if (due.dataset.due < today) {
        const mark = document.createElement("b");
        mark.className = "overdue";
        mark.textContent = " " + table.dataset.overdue;
        due.append(mark);
      }
    }
  }
})();
