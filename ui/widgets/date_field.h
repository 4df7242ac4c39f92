#pragma once

#include <QDateEdit>

namespace coilbook {

/// A day as the logbook takes it: ISO 8601, from 1950 to tomorrow, with a calendar to choose from.
class DateField : public QDateEdit {
    Q_OBJECT
public:
    explicit DateField(QWidget* parent = nullptr);
};

} // namespace coilbook
