# Makes the workbooks beside this file with two writers that are not ours: openpyxl 3.0.9 and XlsxWriter 3.0.2 (Debian 12).
# Run once with `python3 make-workbooks.py`; what each cell holds is said again in sheet.test.ts.
from datetime import date, datetime, time
from openpyxl import Workbook
import xlsxwriter

# A preamble, a header of two lines with merged cells, true dates, text dates, a blank row, an error, a line break in a cell.
book = Workbook()
sheet = book.active
sheet.title = "Forms 2025"
sheet["A1"] = "Season 2025"
for address, text in {"A3": "Form", "B3": "When", "D3": "Hull", "F3": "Memo", "B4": "day", "C4": "start", "D4": "port", "E4": "starboard"}.items():
    sheet[address] = text
for area in ("A3:A4", "B3:C3", "D3:E3", "F3:F4"):
    sheet.merge_cells(area)
rows = {
    5: (1, date(2025, 6, 14), time(6, 30), "clean", "fouled", "two\nlines"),
    6: (2, "06/15/2025", "18:45", "clean", None, 'a "quoted", cell'),
    8: (3, datetime(2025, 6, 16, 0, 0), time(0, 0), "#N/A", "clean", True),
    9: (4, date(2025, 6, 17), time(23, 59, 59), 22.5, 0.1, None),
}
for row, cells in rows.items():
    for column, cell in enumerate(cells, 1):
        if cell is not None:
            sheet.cell(row=row, column=column, value=cell)
sheet["D8"].data_type = "e"
book.create_sheet("Notes")["A1"] = "nothing here"
book.save("forms.xlsx")

# The same moment in both date systems, and the day that the article on the two systems names: 5 July 1998.
for base in (1900, 1904):
    written = xlsxwriter.Workbook(f"dates-{base}.xlsx", {"date_1904": base == 1904})
    page = written.add_worksheet("Dates")
    page.write_row(0, 0, ["what", "value"])
    day = written.add_format({"num_format": "dd/mm/yy"})
    moment = written.add_format({"num_format": "yyyy-mm-dd hh:mm"})
    padded = written.add_format({"num_format": "00000"})
    days = written.add_format({"num_format": '0.0 "days"'})
    page.write(1, 0, "day")
    page.write_datetime(1, 1, datetime(1998, 7, 5), day)
    page.write(2, 0, "serial")
    page.write_number(2, 1, 35981 if base == 1900 else 34519, day)
    page.write(3, 0, "moment")
    page.write_datetime(3, 1, datetime(2025, 11, 2, 1, 30), moment)
    page.write(4, 0, "padded")
    page.write_number(4, 1, 123, padded)
    page.write(5, 0, "days")
    page.write_number(5, 1, 2.5, days)
    page.write(6, 0, "formula")
    page.write_formula(6, 1, "=1+1", None, 2)
    page.write(7, 0, "rich")
    page.write_rich_string(7, 1, "plain ", written.add_format({"bold": True}), "bold")
    written.close()
