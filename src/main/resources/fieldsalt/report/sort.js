document.querySelectorAll("table.sortable thead button").forEach(function (button, column) {
  var up = false;
  button.addEventListener("click", function () {
    var body = button.closest("table").tBodies[0];
    var value = function (row) {
      var cell = row.cells[column];
      return cell.dataset.value === undefined ? cell.textContent : Number(cell.dataset.value);
    };
    up = column === 0 ? !up : !up && button.dataset.pressed !== undefined;
    button.dataset.pressed = "";
    Array.from(body.rows)
      .sort(function (a, b) {
        var x = value(a), y = value(b);
        var order = typeof x === "number" ? x - y : x.localeCompare(y, undefined, { numeric: true });
        return up ? order : -order;
      })
      .forEach(function (row) { body.appendChild(row); });
  });
});
