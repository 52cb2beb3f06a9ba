"""Symbol charts, drawn from the fabric: every stitch where it was worked, so that the chart cannot disagree with the words."""

from loopwright.drawing.chart.charts import chart, charts
from loopwright.drawing.chart.drawn import ChartDrawing, ChartOptions, UnreadRow

__all__ = ["ChartDrawing", "ChartOptions", "UnreadRow", "chart", "charts"]
