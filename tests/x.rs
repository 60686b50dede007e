fn x(){}
